package mainsgap.signal;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.QRDecomposition;

/**
 * A sine {@code A cos(wt) + B sin(wt) + C}, fitted by least squares: three parameters where the
 * frequency is known, four where it is not. The algorithms are those that IEEE 1057 and IEEE 1241
 * name (forms from memory).
 *
 * @param cosineVolts A
 * @param sineVolts B
 * @param offsetVolts C
 * @param frequencyHertz w / 2 pi
 */
public record SineFit(
    double cosineVolts, double sineVolts, double offsetVolts, double frequencyHertz) {

  /** The four-parameter fit stops when a pass changes the frequency by less than this part. */
  private static final double FREQUENCY_TOLERANCE = 1e-10;

  /** The amplitude: the root of {@code A^2 + B^2}. */
  public double amplitudeVolts() {
    return Math.hypot(cosineVolts, sineVolts);
  }

  /**
   * Fits A, B and C at a known frequency.
   *
   * @param volts at least 3 samples, left unchanged
   * @param intervalSeconds between samples; the first is at t = 0
   * @throws IllegalArgumentException for fewer than 3 samples
   */
  public static SineFit threeParameters(
      double[] volts, double intervalSeconds, double frequencyHertz) {
    double[] x = solve(volts, intervalSeconds, frequencyHertz, null);
    return new SineFit(x[0], x[1], x[2], frequencyHertz);
  }

  /**
   * Fits A, B, C and the frequency, from a first guess of it.
   *
   * @param volts at least 4 samples over more than a cycle, left unchanged
   * @param intervalSeconds between samples; the first is at t = 0
   * @param passes how often the frequency is improved at most
   * @throws IllegalArgumentException for fewer than 4 samples
   */
  public static SineFit fourParameters(
      double[] volts, double intervalSeconds, double guessHertz, int passes) {
    SineFit fit = threeParameters(volts, intervalSeconds, guessHertz);
    for (int pass = 0; pass < passes; pass++) {
      double[] x = solve(volts, intervalSeconds, fit.frequencyHertz, fit);
      double changeHertz = x[3] / (2 * Math.PI);
      fit = new SineFit(x[0], x[1], x[2], fit.frequencyHertz + changeHertz);
      if (Math.abs(changeHertz) < FREQUENCY_TOLERANCE * fit.frequencyHertz) {
        break;
      }
    }
    return threeParameters(volts, intervalSeconds, fit.frequencyHertz);
  }

  /** The fourth column is the derivative by w of the sine {@code previous}, where it is given. */
  private static double[] solve(
      double[] volts,
      double intervalSeconds,
      double frequencyHertz,
      @org.jspecify.annotations.Nullable SineFit previous) {
    int columns = previous == null ? 3 : 4;
    if (volts.length < columns) {
      throw new IllegalArgumentException(
          "a sine fit of " + columns + " parameters needs as many samples, found " + volts.length);
    }
    double w = 2 * Math.PI * frequencyHertz;
    double[][] d = new double[volts.length][columns];
    for (int i = 0; i < volts.length; i++) {
      double t = i * intervalSeconds;
      double cos = Math.cos(w * t);
      double sin = Math.sin(w * t);
      d[i][0] = cos;
      d[i][1] = sin;
      d[i][2] = 1;
      if (previous != null) {
        d[i][3] = -previous.cosineVolts * t * sin + previous.sineVolts * t * cos;
      }
    }
    return new QRDecomposition(new Array2DRowRealMatrix(d, false))
        .getSolver()
        .solve(new ArrayRealVector(volts, false))
        .toArray();
  }
}
