package mainsgap.transfer.outcome;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.BiConsumer;
import org.jspecify.annotations.Nullable;

/** A {@link Cleanness} as named figures, and the way back. */
final class CleannessAsFigures {
  /** All names, in their order. */
  static final List<String> NAMES =
      List.of(
          "peakOvershootPercent",
          "peakUndershootPercent",
          "thdBeforePercent",
          "thdAfterPercent",
          "dcOffsetPercent",
          "settlingTimeMs",
          "restrikes",
          "residualPercent",
          "clippedAfterReturn",
          "thdBeforeCycles",
          "thdAfterCycles",
          "crestFactor",
          "settledDeviationPercent",
          "settlingTo3PercentMs",
          "steepestVoltsPerMicrosecond",
          "residualTwoCyclesPercent",
          "residualFiveCyclesPercent",
          "cleanness");

  private CleannessAsFigures() {}

  static void put(Cleanness cleanness, BiConsumer<String, @Nullable Object> figures) {
    figures.accept("peakOvershootPercent", cleanness.peakOvershootPercent());
    figures.accept("clippedAfterReturn", cleanness.clippedAfterReturn());
    figures.accept("peakUndershootPercent", cleanness.peakUndershootPercent());
    put("thdBefore", cleanness.thdBefore(), figures);
    put("thdAfter", cleanness.thdAfter(), figures);
    figures.accept("dcOffsetPercent", cleanness.dcOffsetPercent());
    figures.accept("crestFactor", cleanness.crestFactor());
    figures.accept("settledDeviationPercent", cleanness.settledDeviationPercent());
    figures.accept("settlingTimeMs", cleanness.settlingMillis());
    figures.accept("settlingTo3PercentMs", cleanness.settlingTo3PercentMillis());
    figures.accept("restrikes", cleanness.restrikes());
    figures.accept("steepestVoltsPerMicrosecond", cleanness.steepestVoltsPerMicrosecond());
    figures.accept("residualPercent", cleanness.residual().oneCyclePercent());
    figures.accept("residualTwoCyclesPercent", cleanness.residual().twoCyclesPercent());
    figures.accept("residualFiveCyclesPercent", cleanness.residual().fiveCyclesPercent());
    figures.accept("cleanness", cleanness.word().name().toLowerCase(Locale.ROOT));
  }

  private static void put(
      String name,
      Cleanness.@Nullable Distortion distortion,
      BiConsumer<String, @Nullable Object> figures) {
    if (distortion != null) {
      figures.accept(name + "Percent", distortion.percent());
      figures.accept(name + "Cycles", distortion.cycles());
    }
  }

  /** The cleanness; null where none was stored. */
  static @Nullable Cleanness of(Map<String, @Nullable Object> figures) {
    Double overshoot = number(figures, "peakOvershootPercent");
    Double restrikes = number(figures, "restrikes");
    Double steepest = number(figures, "steepestVoltsPerMicrosecond");
    if (overshoot == null || restrikes == null || steepest == null) {
      return null;
    }
    return new Cleanness(
        overshoot,
        Boolean.TRUE.equals(figures.get("clippedAfterReturn")),
        number(figures, "peakUndershootPercent"),
        distortion(figures, "thdBefore"),
        distortion(figures, "thdAfter"),
        number(figures, "dcOffsetPercent"),
        number(figures, "crestFactor"),
        number(figures, "settledDeviationPercent"),
        number(figures, "settlingTimeMs"),
        number(figures, "settlingTo3PercentMs"),
        restrikes.intValue(),
        steepest,
        new Cleanness.Residual(
            number(figures, "residualPercent"),
            number(figures, "residualTwoCyclesPercent"),
            number(figures, "residualFiveCyclesPercent")));
  }

  private static Cleanness.@Nullable Distortion distortion(
      Map<String, @Nullable Object> figures, String name) {
    Double percent = number(figures, name + "Percent");
    Double cycles = number(figures, name + "Cycles");
    return percent == null || cycles == null
        ? null
        : new Cleanness.Distortion(percent, cycles.intValue());
  }

  private static @Nullable Double number(Map<String, @Nullable Object> figures, String name) {
    return figures.get(name) instanceof Number number ? number.doubleValue() : null;
  }
}
