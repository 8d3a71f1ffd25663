package mainsgap.transfer.outcome;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A word for a return's cleanness, the same as its worst figure. The limits follow the published
 * tolerance of equipment where there is one: 10 % is the steady band of the ITI curve, 140 % its
 * corner at 3 ms, 70 % its sag of half a second, 20 ms its dropout; 8 % THD is the limit of IEC
 * 61000-2-2 (from memory). The others are our own choice. They are no limits of a standard for
 * backup supplies.
 */
public enum CleannessWord {
  /** Every figure that the capture tells is within the first limit. */
  CLEAN,
  /** Some figure is over its first limit, or the voltage does not settle in the record. */
  DISTURBED,
  /** Some figure is over its second limit. */
  ROUGH;

  /** A figure is clean up to {@code clean} and rough above {@code disturbed}. */
  private record Limit(String name, @Nullable Double figure, double clean, double disturbed) {
    CleannessWord word() {
      if (figure == null || figure <= clean) {
        return CLEAN;
      }
      return figure <= disturbed ? DISTURBED : ROUGH;
    }
  }

  /** The word of {@code found}. */
  static CleannessWord of(Cleanness found) {
    CleannessWord worst = found.settlingMillis() == null ? DISTURBED : CLEAN;
    for (Limit limit : limits(found)) {
      worst = limit.word().compareTo(worst) > 0 ? limit.word() : worst;
    }
    return worst;
  }

  /** The figures that make the return no clean one, by their names for people. */
  static List<String> reasons(Cleanness found) {
    List<String> reasons = new ArrayList<>();
    if (found.settlingMillis() == null) {
      reasons.add("not settled");
    }
    limits(found).stream()
        .filter(limit -> limit.word() != CLEAN)
        .forEach(limit -> reasons.add(limit.name()));
    return reasons;
  }

  private static List<Limit> limits(Cleanness found) {
    Cleanness.Distortion thd = found.thdAfter();
    Double offset = found.dcOffsetPercent();
    return List.of(
        new Limit("overshoot", found.peakOvershootPercent(), 10, 40),
        new Limit("undershoot", found.peakUndershootPercent(), 10, 30),
        new Limit("THD", thd == null ? null : (Double) thd.percent(), 8, 25),
        new Limit("DC offset", offset == null ? null : (Double) Math.abs(offset), 1, 5),
        new Limit("settling", found.settlingMillis(), 3, 20),
        new Limit("re-strikes", (double) found.restrikes(), 0, 1),
        new Limit("residual", found.residual().oneCyclePercent(), 10, 30));
  }
}
