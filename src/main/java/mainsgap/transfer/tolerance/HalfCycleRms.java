package mainsgap.transfer.tolerance;

/**
 * What an RMS instrument would read of a gap: Urms(1/2) of IEC 61000-4-30, over one cycle from a
 * zero crossing, refreshed each half cycle. It is told beside the gap, because it cannot measure
 * one that is shorter than a cycle.
 */
final class HalfCycleRms {
  /** A dip begins under this (EN 50160; IEC 61000-4-30 leaves it to the user). */
  private static final double DIP_PERCENT = 90;

  /** The dip ends at the threshold and this much more. */
  private static final double HYSTERESIS_PERCENT = 2;

  private HalfCycleRms() {}

  /**
   * The reading of a clean gap in an undisturbed sine.
   *
   * @param percent the least Urms(1/2), in per cent of nominal
   * @param millis how long the dip is reported to last; 0 where none is
   */
  record Reading(double percent, double millis) {}

  /**
   * The reading of a gap without any voltage, the same sine before and after.
   *
   * @param gapMillis at least 0, finite
   * @param degrees the point on wave of the loss, 0 at the positive-going zero crossing
   * @param hertz of the sine
   */
  static Reading ofCleanGap(double gapMillis, double degrees, double hertz) {
    double cycleSeconds = 1 / hertz;
    double start = degrees / 360 * cycleSeconds;
    double end = start + gapMillis / 1e3;
    double least = 100;
    int dipHalfCycles = 0;
    boolean inDip = false;
    long windows = (long) Math.ceil(2 * end / cycleSeconds);
    for (long window = -2; window <= windows; window++) {
      double from = window * cycleSeconds / 2;
      double percent =
          percent(Math.max(start, from), Math.min(end, from + cycleSeconds), cycleSeconds);
      least = Math.min(least, percent);
      inDip = percent < (inDip ? DIP_PERCENT + HYSTERESIS_PERCENT : DIP_PERCENT);
      dipHalfCycles += inDip ? 1 : 0;
    }
    return new Reading(least, 1e3 * dipHalfCycles * cycleSeconds / 2);
  }

  /** 100 sqrt(1 - 1/T integral of 2 sin^2 over the missing part of one cycle T). */
  private static double percent(double from, double to, double cycleSeconds) {
    if (to <= from) {
      return 100;
    }
    double omega = 2 * Math.PI / cycleSeconds;
    double missing =
        (to - from - (Math.sin(2 * omega * to) - Math.sin(2 * omega * from)) / (2 * omega))
            / cycleSeconds;
    return 100 * Math.sqrt(Math.max(0, 1 - missing));
  }
}
