package mainsgap.transfer.gap;

/**
 * How many combined standard uncertainties hold 95 % (JCGM 100, annex G): 1.960 where many small
 * causes add up to a normal distribution, 1.645 where one rectangular distribution is nearly all,
 * such as where a sample interval holds an instant, 1.900 where two alike are. What lies between is
 * told by the excess kurtosis, 0, -1.2 and -0.6 of these three, and a parabola through them, which
 * holds 94 to 96 % for any one or two rectangular distributions beside a normal one.
 */
final class CoverageFactor {
  private static final double NORMAL = 1.95996;
  private static final double LINEAR = -0.0625;
  private static final double SQUARE = -0.2708;

  /** Of a rectangular distribution. */
  private static final double EXCESS_KURTOSIS = -1.2;

  private CoverageFactor() {}

  /**
   * The factor for a sum of independent causes.
   *
   * @param combined its standard uncertainty, above 0
   * @param rectangular the standard uncertainties of its rectangular causes, in the same unit
   */
  static double of95Percent(double combined, double... rectangular) {
    double fourths = 0;
    for (double standard : rectangular) {
      double share = standard / combined;
      fourths += share * share * share * share;
    }
    double excess = EXCESS_KURTOSIS * Math.min(1, fourths);
    return NORMAL + LINEAR * excess + SQUARE * excess * excess;
  }
}
