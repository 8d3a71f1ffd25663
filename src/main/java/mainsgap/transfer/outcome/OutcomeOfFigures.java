package mainsgap.transfer.outcome;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import mainsgap.signal.Event;
import org.jspecify.annotations.Nullable;

/**
 * The way back from {@link Figures} to the outcome that they were taken from, for figures that were
 * stored. Instants come back within the rounding of seconds to milliseconds, all else exactly.
 */
public final class OutcomeOfFigures {
  private final Map<String, @Nullable Object> figures;

  private OutcomeOfFigures(Map<String, @Nullable Object> figures) {
    this.figures = figures;
  }

  /**
   * The outcome.
   *
   * @param budget of a measured gap; null where none was stored: then one line stands for it
   * @throws IllegalArgumentException if a figure is missing that the outcome cannot do without
   */
  public static Outcome of(
      Map<String, @Nullable Object> figures, @Nullable UncertaintyBudget budget) {
    OutcomeOfFigures stored = new OutcomeOfFigures(figures);
    if ("refused".equals(figures.get("outcome"))) {
      return new Refused(stored.text("reason"));
    }
    if (Boolean.FALSE.equals(figures.get("interruption"))) {
      return stored.noInterruption();
    }
    return figures.get("transferTimeAtLeastMs") == null
        ? stored.measured(budget)
        : stored.noReturn(budget);
  }

  private Measured measured(@Nullable UncertaintyBudget budget) {
    return new Measured(
        event(),
        seconds("lossMs"),
        seconds("lastOpeningMs"),
        seconds("firstReturnMs"),
        seconds("returnMs"),
        number("transferTimeMs"),
        budget == null ? asOneLine(number("expandedUncertaintyMs")) : budget,
        further(),
        number("deadTimeMs"),
        numberOrNull("usableTimeMs"),
        numberOrNull("recoveryTimeMs"),
        number("pointOnWaveDeg"),
        supplies(),
        CleannessAsFigures.of(figures),
        others());
  }

  private FurtherInterruptions further() {
    return further(
        "furtherInterruptions",
        "longestFurtherInterruptionMs",
        "longestFurtherExpandedUncertaintyMs",
        "endsInFurtherInterruption");
  }

  /** Before it was stored whether the record ends in one, such a one had no uncertainty. */
  private FurtherInterruptions further(
      String count, String longest, String uncertainty, String isOpen) {
    Double millis = numberOrNull(longest);
    Double uncertaintyMillis = numberOrNull(uncertainty);
    boolean open =
        figures.get(isOpen) instanceof Boolean stored
            ? stored
            : millis != null && uncertaintyMillis == null;
    Double number = numberOrNull(count);
    return new FurtherInterruptions(
        number == null ? 0 : number.intValue(),
        millis,
        uncertaintyMillis == null ? 0 : uncertaintyMillis,
        open);
  }

  private OtherChannels others() {
    Double marker = numberOrNull("markerMs");
    return new OtherChannels(
        numberOrNull("holdThroughMs"),
        secondLeg(),
        numberOrNull("loadCurrentAfterPercent"),
        marker == null ? null : (Double) (marker / 1e3));
  }

  /** Where its common part was not stored, all of its uncertainty is taken to be common. */
  private OtherChannels.@Nullable SecondLeg secondLeg() {
    Double leg = numberOrNull("secondLegTransferTimeMs");
    Double atLeast = numberOrNull("secondLegTransferTimeAtLeastMs");
    String reason = figures.get("secondLegReason") instanceof String text ? text : null;
    if (leg == null && atLeast == null && reason == null) {
      return null;
    }
    double uncertainty = reason == null ? number("secondLegExpandedUncertaintyMs") : 0;
    Double common = numberOrNull("secondLegCommonUncertaintyMs");
    return new OtherChannels.SecondLeg(
        leg,
        atLeast,
        uncertainty,
        common == null ? uncertainty : common,
        further(
            "secondLegFurtherInterruptions",
            "secondLegLongestFurtherMs",
            "secondLegLongestFurtherExpandedUncertaintyMs",
            "secondLegEndsInFurther"),
        reason);
  }

  private NoReturn noReturn(@Nullable UncertaintyBudget budget) {
    return new NoReturn(
        event(),
        seconds("lossMs"),
        seconds("lastOpeningMs"),
        number("transferTimeAtLeastMs"),
        number("expandedUncertaintyMs"),
        number("pointOnWaveDeg"),
        number("deadTimeMs"),
        supplies(),
        Boolean.TRUE.equals(figures.get("comesBackTooLate")),
        budget,
        others());
  }

  private NoInterruption noInterruption() {
    return new NoInterruption(
        event(),
        number("expandedUncertaintyMs"),
        text("reason"),
        seconds("lossMs"),
        number("pointOnWaveDeg"),
        supplies(),
        others());
  }

  private Supplies supplies() {
    return new Supplies(
        number("frequencyHz"),
        numberOrNull("frequencyStepMilliHz"),
        numberOrNull("amplitudeStepPercent"),
        numberOrNull("phaseStepDeg"));
  }

  private static UncertaintyBudget asOneLine(double expandedMillis) {
    return new UncertaintyBudget(
        List.of(new UncertaintyBudget.Component("as stored", expandedMillis / 2)), 2);
  }

  private Event event() {
    return Event.valueOf(text("event").toUpperCase(Locale.ROOT));
  }

  private double seconds(String name) {
    return number(name) / 1e3;
  }

  /** A figure that was not finite is stored as no value. */
  private double number(String name) {
    Double found = numberOrNull(name);
    return found == null ? Double.NaN : found;
  }

  private @Nullable Double numberOrNull(String name) {
    return figures.get(name) instanceof Number number ? number.doubleValue() : null;
  }

  private String text(String name) {
    if (figures.get(name) instanceof String text) {
      return text;
    }
    throw new IllegalArgumentException("the stored figures have no " + name);
  }
}
