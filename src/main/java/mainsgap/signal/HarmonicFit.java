package mainsgap.signal;

import org.jspecify.annotations.Nullable;

/**
 * Fits a {@link HarmonicModel} by least squares, the frequency included: the four-parameter sine
 * fit with harmonics and a drift of the offset beside the fundamental. Time counts from the middle
 * of the window, where the frequency's column is nearly orthogonal to the others, so that the
 * normal equations are well conditioned.
 */
public final class HarmonicFit {
  /** More samples than this are thinned: the fit's error is then far below its model's. */
  private static final int MOST_SAMPLES = 10_000;

  private static final int PASSES = 6;
  private static final double FREQUENCY_TOLERANCE = 1e-8;

  /** A pass moves the frequency by this share at most, so that a bad start does not run away. */
  private static final double LARGEST_STEP = 0.02;

  private final double[] volts;
  private final TimeAxis time;
  private final int from;
  private final int to;
  private final int stride;
  private final int orders;
  private final boolean drifts;
  private final SampledWindow window;
  private final double middleSeconds;

  /** Of the equations that are solved, in one place for all passes. */
  private final double[][] normal;

  private HarmonicFit(double[] volts, TimeAxis time, int from, int to, int orders, boolean drifts) {
    this.volts = volts;
    this.time = time;
    this.from = from;
    this.to = to;
    this.stride = Math.max(1, (to - from) / MOST_SAMPLES);
    this.orders = orders;
    this.drifts = drifts;
    this.window = SampledWindow.of(volts, time, from, to, stride);
    this.middleSeconds = time.secondsAt(window.middle());
    this.normal = new double[2 * orders + 3][2 * orders + 3];
  }

  /**
   * Fits samples {@code from} (inclusive) to {@code to} (exclusive).
   *
   * @param volts the samples of {@code time}, left unchanged
   * @param guessHertz the frequency to start from
   * @param orders the number of harmonics, the fundamental counted, at least 1; fewer are fitted
   *     where the sample rate does not carry them
   * @param refine whether the frequency and a drift of the offset are fitted too; it needs more
   *     than a cycle
   * @throws FitException if the window does not determine the unknowns
   */
  public static HarmonicModel fit(
      double[] volts,
      TimeAxis time,
      int from,
      int to,
      double guessHertz,
      int orders,
      boolean refine) {
    int carried = (int) Math.floor(0.4 * time.sampleRateHertz() / guessHertz);
    int used = Math.max(1, Math.min(orders, carried));
    if (to - from < 2 * used + 4) {
      throw new FitException(
          "a fit of " + used + " harmonics needs more samples than " + (to - from));
    }
    return new HarmonicFit(volts, time, from, to, used, refine).fit(guessHertz);
  }

  private HarmonicModel fit(double guessHertz) {
    double frequency = guessHertz;
    HarmonicEquations equations = equations(frequency);
    double[] x = solve(equations, null);
    for (int pass = 0; drifts && pass < PASSES; pass++) {
      double[] moved = solve(equations, x);
      double change = moved[2 * orders + 2];
      double limit = LARGEST_STEP * guessHertz;
      frequency += Math.max(-limit, Math.min(limit, change));
      if (Math.abs(change) < FREQUENCY_TOLERANCE * guessHertz) {
        x = moved; // exact to the square of the change
        break;
      }
      equations = equations(frequency);
      x = solve(equations, null);
    }
    return model(frequency, x);
  }

  private HarmonicEquations equations(double frequency) {
    return new HarmonicEquations(window, frequency, orders, drifts);
  }

  private double[] solve(HarmonicEquations equations, double @Nullable [] previous) {
    equations.fill(normal, previous);
    return solveSymmetric(normal, equations.rightSide(previous));
  }

  private HarmonicModel model(double frequency, double[] x) {
    int first = drifts ? 2 : 1;
    double[] cosine = new double[orders];
    double[] sine = new double[orders];
    for (int k = 0; k < orders; k++) {
      cosine[k] = x[first + 2 * k];
      sine[k] = x[first + 2 * k + 1];
    }
    double drift = drifts ? x[1] : 0;
    HarmonicModel silent =
        new HarmonicModel(middleSeconds, frequency, x[0], drift, cosine, sine, 0, 0);
    return silent.withNoise(Deviations.of(volts, time, from, to, stride, silent));
  }

  /** A tiny ridge keeps a window of part of a cycle solvable without moving the answer. */
  private static double[] solveSymmetric(double[][] normal, double[] right) {
    double scale = 0;
    for (int p = 0; p < right.length; p++) {
      scale = Math.max(scale, normal[p][p]);
    }
    for (double ridge = 0; ; ridge = ridge == 0 ? 1e-12 : 100 * ridge) {
      if (PositiveEquations.solve(normal, ridge * scale, right)) {
        return right;
      }
      if (ridge > 1e-2) {
        throw new FitException("the samples do not determine the fit");
      }
    }
  }
}
