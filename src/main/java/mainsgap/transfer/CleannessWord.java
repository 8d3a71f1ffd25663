package mainsgap.transfer;

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
  private record Limit(@Nullable Double figure, double clean, double disturbed) {
    CleannessWord word() {
      if (figure == null || figure <= clean) {
        return CLEAN;
      }
      return figure <= disturbed ? DISTURBED : ROUGH;
    }
  }

  /** The word of {@code found}. */
  static CleannessWord of(Cleanness found) {
    Cleanness.Distortion thd = found.thdAfter();
    Double offset = found.dcOffsetPercent();
    List<Limit> limits =
        List.of(
            new Limit(found.peakOvershootPercent(), 10, 40),
            new Limit(found.peakUndershootPercent(), 10, 30),
            new Limit(thd == null ? null : (Double) thd.percent(), 8, 25),
            new Limit(offset == null ? null : (Double) Math.abs(offset), 1, 5),
            new Limit(found.settlingMillis(), 3, 20),
            new Limit((double) found.restrikes(), 0, 1),
            new Limit(found.residual().oneCyclePercent(), 10, 30));
    CleannessWord worst = found.settlingMillis() == null ? DISTURBED : CLEAN;
    for (Limit limit : limits) {
      worst = limit.word().compareTo(worst) > 0 ? limit.word() : worst;
    }
    return worst;
  }
}
