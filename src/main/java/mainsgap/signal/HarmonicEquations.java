package mainsgap.signal;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * The normal equations of a {@link HarmonicFit} at one frequency. Their matrix comes from sums in
 * closed form, so that a sample costs a few products for each harmonic and not for each pair.
 * Unknowns: offset, drift (where fitted), then cosine and sine of each harmonic, and at last, where
 * asked for, the change of frequency in hertz.
 */
final class HarmonicEquations {
  /** Angles turned from sample to sample are taken anew after so many. */
  private static final int TURNED_SAMPLES = 32;

  private final int orders;
  private final int harmonicsFrom;

  // by multiples of the fundamental's angle
  private final double[] cosines;
  private final double[] timesSines;
  private final double[] squaresCosines;

  // by order, order 0 being the samples alone
  private final double[] voltsCosines;
  private final double[] voltsSines;
  private final double[] timesVoltsCosines;
  private final double[] timesVoltsSines;

  /**
   * Sums up every {@code stride}-th sample of a window.
   *
   * @param window of the samples, its times counted from their middle
   */
  HarmonicEquations(SampledWindow window, double frequencyHertz, int orders, boolean drifts) {
    this.orders = orders;
    this.harmonicsFrom = drifts ? 2 : 1;
    this.cosines = new double[2 * orders + 1];
    this.timesSines = new double[2 * orders + 1];
    this.squaresCosines = new double[2 * orders + 1];
    this.voltsCosines = new double[orders + 1];
    this.voltsSines = new double[orders + 1];
    this.timesVoltsCosines = new double[orders + 1];
    this.timesVoltsSines = new double[orders + 1];
    EquidistantSums sums = new EquidistantSums(window.count(), window.intervalSeconds());
    double step = 2 * Math.PI * frequencyHertz * window.intervalSeconds();
    for (int j = 0; j <= 2 * orders; j++) {
      cosines[j] = sums.cosines(j * step);
      timesSines[j] = sums.timesSines(j * step);
      squaresCosines[j] = sums.squaresCosines(j * step);
    }
    sumSamples(window, step);
  }

  /** In pairs about the middle, whose cosines are the same and whose sines are opposite. */
  private void sumSamples(SampledWindow window, double step) {
    double turnCos = Math.cos(step);
    double turnSin = Math.sin(step);
    double cos = 1;
    double sin = 0;
    for (int i = 0; i < window.count() / 2; i++) {
      double place = (window.count() - 1) / 2.0 - i;
      if (i % TURNED_SAMPLES == 0) {
        cos = Math.cos(step * place);
        sin = Math.sin(step * place);
      }
      double earlier = window.voltsAt(i);
      double later = window.voltsAt(window.count() - 1 - i);
      sumPair(later + earlier, later - earlier, place * window.intervalSeconds(), cos, sin);
      double next = cos * turnCos + sin * turnSin;
      sin = sin * turnCos - cos * turnSin;
      cos = next;
    }
    if (window.count() % 2 == 1) {
      sumPair(window.voltsAt(window.count() / 2), 0, 0, 1, 0);
    }
  }

  /**
   * Adds two samples as far from the middle as each other, or the middle one.
   *
   * @param sum of their voltages
   * @param difference the later one less the earlier one
   * @param t the time of the later one
   */
  private void sumPair(double sum, double difference, double t, double cos, double sin) {
    double timesSum = t * sum;
    double timesDifference = t * difference;
    double cosK = 1;
    double sinK = 0;
    voltsCosines[0] += sum;
    timesVoltsCosines[0] += timesDifference;
    for (int k = 1; k <= orders; k++) {
      double next = cosK * cos - sinK * sin;
      sinK = sinK * cos + cosK * sin;
      cosK = next;
      voltsCosines[k] += sum * cosK;
      voltsSines[k] += difference * sinK;
      timesVoltsCosines[k] += timesDifference * cosK;
      timesVoltsSines[k] += timesSum * sinK;
    }
  }

  /**
   * Fills in the matrix, with the column of the frequency where the unknowns without it are given:
   * {@code 2 pi t sum k (b_k cos k - a_k sin k)}.
   *
   * @param matrix at least as large as {@link #rightSide} is long; all of it is overwritten
   */
  void fill(double[][] matrix, double @Nullable [] unknowns) {
    for (double[] row : matrix) {
      Arrays.fill(row, 0);
    }
    matrix[0][0] = cosines[0];
    if (harmonicsFrom == 2) {
      matrix[1][1] = squaresCosines[0];
    }
    for (int k = 1; k <= orders; k++) {
      int cosine = cosineAt(k);
      put(matrix, 0, cosine, cosines[k]);
      if (harmonicsFrom == 2) {
        put(matrix, 1, cosine + 1, timesSines[k]);
      }
      for (int m = 1; m <= orders; m++) {
        matrix[cosine][cosineAt(m)] = cosineProduct(cosines, k, m);
        matrix[cosine + 1][cosineAt(m) + 1] = sineProduct(cosines, k, m);
      }
    }
    if (unknowns != null) {
      putFrequency(matrix, unknowns);
    }
  }

  private void putFrequency(double[][] matrix, double[] unknowns) {
    int last = unknowns.length;
    double[] column = new double[last + 1];
    for (int k = 1; k <= orders; k++) {
      double a = 2 * Math.PI * k * unknowns[cosineAt(k)];
      double b = 2 * Math.PI * k * unknowns[cosineAt(k) + 1];
      column[0] -= a * timesSines[k];
      column[1] += b * squaresCosines[k];
      for (int m = 1; m <= orders; m++) {
        double apart = Math.signum(k - m) * timesSines[Math.abs(k - m)];
        column[cosineAt(m)] -= a * (timesSines[k + m] + apart) / 2;
        column[cosineAt(m) + 1] += b * (timesSines[k + m] - apart) / 2;
        double scale = 2 * Math.PI * m;
        column[last] +=
            scale
                * (a * unknowns[cosineAt(m)] * sineProduct(squaresCosines, k, m)
                    + b * unknowns[cosineAt(m) + 1] * cosineProduct(squaresCosines, k, m));
      }
    }
    for (int p = 0; p <= last; p++) {
      put(matrix, p, last, column[p]);
    }
  }

  /** The right side that belongs to the matrix of {@link #fill}. */
  double[] rightSide(double @Nullable [] unknowns) {
    double[] right = new double[harmonicsFrom + 2 * orders + (unknowns == null ? 0 : 1)];
    right[0] = voltsCosines[0];
    if (harmonicsFrom == 2) {
      right[1] = timesVoltsCosines[0];
    }
    for (int k = 1; k <= orders; k++) {
      right[cosineAt(k)] = voltsCosines[k];
      right[cosineAt(k) + 1] = voltsSines[k];
      if (unknowns != null) {
        right[right.length - 1] +=
            2
                * Math.PI
                * k
                * (unknowns[cosineAt(k) + 1] * timesVoltsCosines[k]
                    - unknowns[cosineAt(k)] * timesVoltsSines[k]);
      }
    }
    return right;
  }

  private int cosineAt(int order) {
    return harmonicsFrom + 2 * (order - 1);
  }

  private static double cosineProduct(double[] sums, int k, int m) {
    return (sums[Math.abs(k - m)] + sums[k + m]) / 2;
  }

  private static double sineProduct(double[] sums, int k, int m) {
    return (sums[Math.abs(k - m)] - sums[k + m]) / 2;
  }

  private static void put(double[][] matrix, int p, int q, double value) {
    matrix[p][q] = value;
    matrix[q][p] = value;
  }
}
