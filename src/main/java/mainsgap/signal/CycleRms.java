package mainsgap.signal;

/**
 * Root mean square by the cycle: Urms(1/2) of IEC 61000-4-30, over one cycle that starts at a zero
 * crossing of the fundamental, refreshed each half cycle (one-cycle windows from a meter maker's
 * technical note; their start from memory).
 */
public final class CycleRms {
  private CycleRms() {}

  /**
   * Value k is that of the cycle which starts {@code k / 2} cycles after {@code firstSample}. As
   * many as fit before {@code end}; a window that starts before the record is cut off there.
   *
   * @param volts left unchanged
   * @param firstSample where the first window starts, a fraction of samples allowed
   * @param end one after the last sample that may count, at most the length of {@code volts}
   * @param cycleSamples the samples of a cycle, a fraction allowed, at least 2
   */
  public static double[] refreshedEachHalfCycle(
      double[] volts, double firstSample, int end, double cycleSamples) {
    if (!(cycleSamples >= 2)) {
      throw new IllegalArgumentException("a cycle has at least 2 samples, found " + cycleSamples);
    }
    double half = cycleSamples / 2;
    int count = (int) Math.max(0, Math.ceil((end - firstSample) / half - 2));
    double[] rms = new double[count];
    for (int k = 0; k < count; k++) {
      double start = firstSample + k * half;
      int from = (int) Math.max(0, Math.round(start));
      rms[k] = of(volts, from, (int) Math.round(start + cycleSamples));
    }
    return rms;
  }

  /** Of samples {@code from} (inclusive) to {@code to} (exclusive); 0 where there are none. */
  public static double of(double[] volts, int from, int to) {
    double squares = 0;
    for (int i = from; i < to; i++) {
      squares += volts[i] * volts[i];
    }
    return Math.sqrt(squares / Math.max(1, to - from));
  }
}
