package mainsgap.transfer.tolerance;

/**
 * The cells of EN 50160 for voltage dips: rows A to D by the residual voltage, X for interruptions,
 * columns 1 to 5 by the duration (as in a technical note on EN 50160; that X begins under 5 % since
 * the edition of 2010: from memory).
 */
public final class DipClass {
  /** What is shorter has no cell. */
  static final double LEAST_MILLIS = 10;

  private static final double[] RESIDUALS = {80, 70, 40, 5, 0};
  private static final double[] MILLIS = {200, 500, 1e3, 5e3, 60e3};
  private static final String ROWS = "ABCDX";

  private DipClass() {}

  /**
   * The cell of one dip, such as "D1", or the sentence why it has none.
   *
   * @param residualPercent the least Urms(1/2) in per cent of the reference voltage
   * @param millis its duration
   */
  public static String of(double residualPercent, double millis) {
    if (millis < LEAST_MILLIS) {
      return "below EN 50160 classification";
    }
    if (residualPercent >= 90) {
      return "no dip";
    }
    for (int column = 0; column < MILLIS.length; column++) {
      if (millis <= MILLIS[column]) {
        return "" + row(residualPercent) + (column + 1);
      }
    }
    return "beyond EN 50160 classification";
  }

  private static char row(double residualPercent) {
    for (int row = 0; row < RESIDUALS.length; row++) {
      if (residualPercent >= RESIDUALS[row]) {
        return ROWS.charAt(row);
      }
    }
    throw new IllegalArgumentException(
        "a residual voltage is a per cent from 0 up, found " + residualPercent);
  }
}
