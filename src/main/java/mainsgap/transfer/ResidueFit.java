package mainsgap.transfer;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.linear.LUDecomposition;

/**
 * Fits the {@link Residue} that explains a stretch of samples best for its number of parameters: a
 * level, a decaying level, a decaying alternating voltage, a level with hum (Bayesian information
 * criterion).
 */
final class ResidueFit {
  /** More samples than this do not move the fit. */
  private static final int MOST_SAMPLES = 400;

  private static final double SHORTEST_DECAY_SECONDS = 0.05e-3;

  /** A motor runs down, a sag does not. */
  private static final double LONGEST_DECAY_SECONDS = 0.12;

  private static final double DECAY_RATIO = 2;

  /** A motor that runs on slips from the mains frequency downwards. */
  private static final double[] FREQUENCY_SHARES = {1.0, 0.95, 0.9, 0.85, 0.8, 0.72};

  private static final double SHORTEST_ALTERNATING_DECAY_SECONDS = 3e-3;

  /** A shorter stretch tells no decay and no frequency of an alternating residue. */
  private static final double ALTERNATING_CYCLES = 0.25;

  private static final double USUAL_DECAY_SECONDS = 30e-3;
  private static final double USUAL_SHARE = 0.93;

  private static final int ROUNDS = 3;
  private static final double HELD = Double.POSITIVE_INFINITY;

  /**
   * A residue starts from what the supply was, so it is no larger than this and, where it swings,
   * no smaller.
   */
  private static final double LARGEST_SHARE_OF_PEAK = 1.3;

  /**
   * What a level decays to is nothing, but for the offset of the instrument: a fit that lets it
   * decay to more is held to this.
   */
  private static final double LARGEST_REST_SHARE_OF_PEAK = 0.03;

  /** An open load picks up a few per cent. */
  private static final double LARGEST_HUM_SHARE_OF_PEAK = 0.06;

  private static final double SMALLEST_SWING_SHARE_OF_PEAK = 0.25;

  private final Recording recording;
  private final int from;
  private final int to;
  private final double reference;
  private final double[] t;
  private final double[] v;
  private final double noiseVolts;

  /** A frequency of 0 makes the residue a level; no decay holds it, with hum or without. */
  private record Shape(double decay, double hertz) {
    boolean isHum() {
      return decay == HELD && hertz > 0;
    }

    boolean isDecay() {
      return decay != HELD && hertz == 0;
    }

    int columns() {
      return isHum() ? 3 : decay == HELD ? 1 : 2;
    }

    int parameters() {
      return decay == HELD ? columns() : hertz == 0 ? 3 : 4;
    }
  }

  @SuppressWarnings("ArrayRecordComponent") // made for one call
  private record Solved(Shape shape, double[] x, double meanSquare, double score) {}

  private ResidueFit(Recording recording, int from, int to, double noiseVolts) {
    this.recording = recording;
    this.from = from;
    this.to = to;
    this.noiseVolts = noiseVolts;
    int stride = Math.max(1, (to - from) / MOST_SAMPLES);
    int n = (to - from + stride - 1) / stride;
    this.reference = recording.time().secondsAt(from);
    this.t = new double[n];
    this.v = new double[n];
    for (int k = 0; k < n; k++) {
      t[k] = recording.time().secondsAt(from + k * stride) - reference;
      v[k] = recording.volts()[from + k * stride];
    }
  }

  /**
   * Fits samples {@code from} (inclusive) to {@code to} (exclusive), at least one.
   *
   * @param noiseVolts a spread below it says nothing
   */
  static Residue fit(Recording recording, int from, int to, double noiseVolts) {
    return new ResidueFit(recording, from, to, noiseVolts).best();
  }

  private Residue best() {
    double span = (to - from) * recording.time().intervalSeconds();
    double nominalHertz = recording.task().nominalFrequencyHertz();
    Solved best = solve(new Shape(HELD, 0));
    if (t.length >= 5) {
      best = better(best, bestDecay(span, 0, SHORTEST_DECAY_SECONDS));
    }
    if (t.length >= 20 && span > ALTERNATING_CYCLES / nominalHertz) {
      Solved alternating = best;
      for (double share : FREQUENCY_SHARES) {
        alternating =
            better(
                alternating,
                bestDecay(span, share * nominalHertz, SHORTEST_ALTERNATING_DECAY_SECONDS));
      }
      best = better(alternating, solve(new Shape(HELD, nominalHertz)));
    }
    if (t.length >= 5 && span <= ALTERNATING_CYCLES / nominalHertz) {
      Solved swinging = solve(new Shape(USUAL_DECAY_SECONDS, USUAL_SHARE * nominalHertz));
      best = better(swinging, best.shape.decay == HELD ? best : refined(best));
      return residue(best);
    }
    return residue(best.shape.decay == HELD ? best : refined(best));
  }

  private Solved bestDecay(double span, double hertz, double shortest) {
    Solved best = solve(new Shape(shortest, hertz));
    for (double decay = shortest * DECAY_RATIO;
        decay < Math.min(LONGEST_DECAY_SECONDS, 8 * span);
        decay *= DECAY_RATIO) {
      best = better(best, solve(new Shape(decay, hertz)));
    }
    return best;
  }

  private static Solved better(Solved one, Solved other) {
    return other.score < one.score ? other : one;
  }

  private Solved refined(Solved coarse) {
    Solved best = coarse;
    double decayRatio = DECAY_RATIO;
    double hertzRatio = 1.06;
    for (int round = 0; round < ROUNDS; round++) {
      Shape shape = best.shape;
      double decay = lowest(shape.decay, decayRatio, d -> solve(new Shape(d, shape.hertz)).score);
      Shape decayed = new Shape(decay, shape.hertz);
      best = better(best, solve(decayed));
      if (shape.hertz > 0) {
        double hertz = lowest(shape.hertz, hertzRatio, h -> solve(new Shape(decay, h)).score);
        best = better(best, solve(new Shape(decay, hertz)));
      }
      decayRatio = Math.sqrt(decayRatio);
      hertzRatio = Math.sqrt(hertzRatio);
    }
    return best;
  }

  /** The best of a few values between {@code x / ratio} and {@code x * ratio}. */
  private static double lowest(double x, double ratio, DoubleUnaryOperator score) {
    double best = x;
    double bestScore = score.applyAsDouble(x);
    for (int k = -4; k <= 4; k++) {
      double tried = x * Math.pow(ratio, k / 4.0);
      double s = k == 0 ? bestScore : score.applyAsDouble(tried);
      if (s < bestScore) {
        bestScore = s;
        best = tried;
      }
    }
    return best;
  }

  /** Linear unknowns: an offset and a decaying level, or a decaying cosine and sine. */
  private Solved solve(Shape shape) {
    int columns = shape.columns();
    double[][] normal = new double[columns][columns];
    double[] right = new double[columns];
    double[] row = new double[columns];
    double squares = 0;
    for (int k = 0; k < t.length; k++) {
      fillRow(row, t[k], shape);
      squares += v[k] * v[k];
      for (int p = 0; p < columns; p++) {
        right[p] += row[p] * v[k];
        for (int q = 0; q < columns; q++) {
          normal[p][q] += row[p] * row[q];
        }
      }
    }
    DecompositionSolver solver =
        new LUDecomposition(new Array2DRowRealMatrix(normal, false), 1e-12).getSolver();
    if (!solver.isNonSingular()) {
      return new Solved(shape, new double[columns], squares, Double.POSITIVE_INFINITY);
    }
    double[] x = solver.solve(new ArrayRealVector(right, false)).toArray();
    double rest = LARGEST_REST_SHARE_OF_PEAK * recording.peakVolts();
    double left = squares;
    if (shape.isDecay() && Math.abs(x[0]) > rest) {
      x[0] = Math.copySign(rest, x[0]);
      x[1] = (right[1] - normal[0][1] * x[0]) / normal[1][1];
      left += x[0] * x[0] * normal[0][0] - 2 * x[0] * right[0] - x[1] * x[1] * normal[1][1];
    } else {
      for (int p = 0; p < columns; p++) {
        left -= x[p] * right[p];
      }
    }
    double meanSquare = Math.max(0, left) / t.length;
    double score =
        t.length * Math.log(meanSquare + noiseVolts * noiseVolts / 4)
            + shape.parameters() * Math.log(t.length);
    return new Solved(shape, x, meanSquare, isPlausible(shape, x) ? score : 1e300);
  }

  private boolean isPlausible(Shape shape, double[] x) {
    double peak = recording.peakVolts();
    if (shape.isHum()) {
      return Math.hypot(x[1], x[2]) < LARGEST_HUM_SHARE_OF_PEAK * peak;
    }
    if (shape.hertz > 0) {
      if (shape.decay > LONGEST_DECAY_SECONDS) {
        return false;
      }
      double swing = Math.hypot(x[0], x[1]);
      return swing < LARGEST_SHARE_OF_PEAK * peak && swing > SMALLEST_SWING_SHARE_OF_PEAK * peak;
    }
    return shape.decay == HELD || Math.abs(x[1]) < LARGEST_SHARE_OF_PEAK * peak;
  }

  private static void fillRow(double[] row, double t, Shape shape) {
    if (shape.isHum()) {
      double angle = 2 * Math.PI * shape.hertz * t;
      row[0] = 1;
      row[1] = Math.cos(angle);
      row[2] = Math.sin(angle);
    } else if (shape.hertz > 0) {
      double envelope = Math.exp(-t / shape.decay);
      double angle = 2 * Math.PI * shape.hertz * t;
      row[0] = envelope * Math.cos(angle);
      row[1] = envelope * Math.sin(angle);
    } else {
      row[0] = 1;
      if (row.length > 1) {
        row[1] = Math.exp(-t / shape.decay);
      }
    }
  }

  private Residue residue(Solved best) {
    Shape shape = best.shape;
    double spread = Math.sqrt(best.meanSquare * t.length / Math.max(1, t.length - shape.columns()));
    double[] x = best.x;
    if (shape.isHum()) {
      return new Residue(reference, x[0], HELD, shape.hertz, x[1], x[2], spread, to);
    }
    if (shape.hertz > 0) {
      return new Residue(reference, 0, shape.decay, shape.hertz, x[0], x[1], spread, to);
    }
    return shape.decay == HELD
        ? Residue.level(x[0], spread, to)
        : new Residue(reference, x[0], shape.decay, 0, x[1], 0, spread, to);
  }
}
