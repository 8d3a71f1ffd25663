package mainsgap.statistics;

import java.util.Arrays;

/**
 * The usual figures of a sample, in the unit of its readings.
 *
 * @param n the number of readings, at least 1
 * @param mean the arithmetic mean
 * @param standardDeviation the square root of the variance with n - 1; NaN for one reading
 * @param max the largest reading
 * @param median the middle reading, or the mean of the middle two
 */
public record Sample(int n, double mean, double standardDeviation, double max, double median) {

  /**
   * The figures of {@code readings}, which stay unchanged.
   *
   * @throws IllegalArgumentException if there is no reading or one is not finite
   */
  public static Sample of(double[] readings) {
    if (readings.length == 0) {
      throw new IllegalArgumentException("a sample needs at least one reading, found none");
    }
    for (double reading : readings) {
      if (!Double.isFinite(reading)) {
        throw new IllegalArgumentException("a sample needs finite readings, found " + reading);
      }
    }
    double[] sorted = readings.clone();
    Arrays.sort(sorted);
    int n = sorted.length;
    double median = (sorted[(n - 1) / 2] + sorted[n / 2]) / 2;
    double mean = mean(readings);
    return new Sample(n, mean, standardDeviation(readings, mean), sorted[n - 1], median);
  }

  /** A second pass over the residuals takes out the rounding of the first sum. */
  private static double mean(double[] x) {
    double sum = 0;
    for (double value : x) {
      sum += value;
    }
    double mean = sum / x.length;
    double residual = 0;
    for (double value : x) {
      residual += value - mean;
    }
    return mean + residual / x.length;
  }

  /**
   * Two passes with the correction of Chan, Golub and LeVeque (1983): one pass loses all digits
   * where the mean is large beside the spread.
   */
  private static double standardDeviation(double[] x, double mean) {
    if (x.length < 2) {
      return Double.NaN;
    }
    double squares = 0;
    double residual = 0;
    for (double value : x) {
      double d = value - mean;
      squares += d * d;
      residual += d;
    }
    return Math.sqrt(Math.max(0, squares - residual * residual / x.length) / (x.length - 1));
  }
}
