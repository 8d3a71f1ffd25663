package mainsgap.signal;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.NonPositiveDefiniteMatrixException;

/**
 * Fits a {@link HarmonicModel} by least squares, the frequency included: the four-parameter sine
 * fit with harmonics beside the fundamental. Time counts from the middle of the window, where the
 * frequency's column is nearly orthogonal to the others, so that the normal equations are well
 * conditioned.
 */
public final class HarmonicFit {
  /** More samples than this are thinned: the fit's error is then far below its model's. */
  private static final int MOST_SAMPLES = 24_000;

  private static final int PASSES = 6;
  private static final double FREQUENCY_TOLERANCE = 1e-9;

  private HarmonicFit() {}

  /**
   * Fits samples {@code from} (inclusive) to {@code to} (exclusive).
   *
   * @param volts the samples of {@code time}, left unchanged
   * @param guessHertz the frequency to start from
   * @param orders the number of harmonics, the fundamental counted, at least 1; fewer are fitted
   *     where the sample rate does not carry them
   * @param refineFrequency whether the frequency is fitted too; it needs more than a cycle
   * @throws IllegalArgumentException if the window holds fewer samples than unknowns
   */
  public static HarmonicModel fit(
      double[] volts,
      TimeAxis time,
      int from,
      int to,
      double guessHertz,
      int orders,
      boolean refineFrequency) {
    int carried = (int) Math.floor(0.4 * time.sampleRateHertz() / guessHertz);
    int used = Math.max(1, Math.min(orders, carried));
    if (to - from < 2 * used + 3) {
      throw new IllegalArgumentException(
          "a fit of " + used + " harmonics needs more samples than " + (to - from));
    }
    int stride = Math.max(1, (to - from) / MOST_SAMPLES);
    Window window = new Window(volts, time, from, to, stride);
    double frequency = guessHertz;
    double[] x = window.solve(frequency, used, null);
    for (int pass = 0; refineFrequency && pass < PASSES; pass++) {
      double[] improved = window.solve(frequency, used, x);
      double change = improved[2 * used + 1];
      double limit = 0.02 * guessHertz;
      frequency += Math.max(-limit, Math.min(limit, change));
      x = window.solve(frequency, used, null);
      if (Math.abs(change) < FREQUENCY_TOLERANCE * guessHertz) {
        break;
      }
    }
    return window.model(frequency, used, x);
  }

  private static final class Window {
    private final double[] volts;
    private final TimeAxis time;
    private final int from;
    private final int to;
    private final int stride;
    private final double middleSeconds;

    Window(double[] volts, TimeAxis time, int from, int to, int stride) {
      this.volts = volts;
      this.time = time;
      this.from = from;
      this.to = to;
      this.stride = stride;
      this.middleSeconds = time.secondsAt((from + to - 1) / 2.0);
    }

    /**
     * Unknowns: offset, then cosine and sine of each harmonic; with {@code previous} also the
     * change of frequency in hertz.
     */
    double[] solve(
        double frequency, int orders, double @org.jspecify.annotations.Nullable [] previous) {
      int unknowns = 2 * orders + 1 + (previous == null ? 0 : 1);
      double[][] normal = new double[unknowns][unknowns];
      double[] right = new double[unknowns];
      double[] row = new double[unknowns];
      for (int i = from; i < to; i += stride) {
        double t = time.secondsAt(i) - middleSeconds;
        fillRow(row, t, frequency, orders, previous);
        for (int p = 0; p < unknowns; p++) {
          double factor = row[p];
          right[p] += factor * volts[i];
          double[] line = normal[p];
          for (int q = p; q < unknowns; q++) {
            line[q] += factor * row[q];
          }
        }
      }
      for (int p = 0; p < unknowns; p++) {
        for (int q = 0; q < p; q++) {
          normal[p][q] = normal[q][p];
        }
      }
      return solveSymmetric(normal, right);
    }

    private static void fillRow(
        double[] row,
        double t,
        double frequency,
        int orders,
        double @org.jspecify.annotations.Nullable [] previous) {
      double angle = 2 * Math.PI * frequency * t;
      double cos = Math.cos(angle);
      double sin = Math.sin(angle);
      double cosK = 1;
      double sinK = 0;
      double slope = 0;
      row[0] = 1;
      for (int k = 1; k <= orders; k++) {
        double next = cosK * cos - sinK * sin;
        sinK = sinK * cos + cosK * sin;
        cosK = next;
        row[2 * k - 1] = cosK;
        row[2 * k] = sinK;
        if (previous != null) {
          slope += k * (previous[2 * k] * cosK - previous[2 * k - 1] * sinK);
        }
      }
      if (previous != null) {
        row[2 * orders + 1] = 2 * Math.PI * t * slope;
      }
    }

    HarmonicModel model(double frequency, int orders, double[] x) {
      double[] cosine = new double[orders];
      double[] sine = new double[orders];
      for (int k = 1; k <= orders; k++) {
        cosine[k - 1] = x[2 * k - 1];
        sine[k - 1] = x[2 * k];
      }
      HarmonicModel silent = new HarmonicModel(middleSeconds, frequency, x[0], cosine, sine, 0, 0);
      Deviations deviations = Deviations.of(volts, time, from, to, stride, silent);
      return new HarmonicModel(
          middleSeconds,
          frequency,
          x[0],
          cosine,
          sine,
          deviations.standardDeviationVolts(),
          deviations.neighbourCorrelation());
    }
  }

  /** A tiny ridge keeps a window of part of a cycle solvable without moving the answer. */
  private static double[] solveSymmetric(double[][] normal, double[] right) {
    for (double ridge = 1e-12; ; ridge *= 100) {
      double[][] copy = new double[normal.length][];
      for (int p = 0; p < normal.length; p++) {
        copy[p] = normal[p].clone();
        copy[p][p] *= 1 + ridge;
      }
      try {
        return new CholeskyDecomposition(new Array2DRowRealMatrix(copy, false), 1e-9, 1e-14)
            .getSolver()
            .solve(new ArrayRealVector(right, false))
            .toArray();
      } catch (NonPositiveDefiniteMatrixException e) {
        if (ridge > 1e-2) {
          throw new IllegalArgumentException("the window does not determine the fit", e);
        }
      }
    }
  }
}
