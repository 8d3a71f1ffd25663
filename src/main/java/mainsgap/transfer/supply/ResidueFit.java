package mainsgap.transfer.supply;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;

/**
 * Fits the {@link Residue} that explains a stretch of samples best for its number of parameters: a
 * level, a decaying level, a decaying alternating voltage, a level with hum (Bayesian information
 * criterion).
 */
public final class ResidueFit {
  /** More samples than this do not move the fit. */
  private static final int MOST_SAMPLES = 400;

  private static final double SHORTEST_DECAY_SECONDS = 0.05e-3;

  private static final double DECAY_RATIO = 2;

  /** A decay that long beside the stretch is a held level. */
  private static final double LONGEST_DECAY_SPANS = 8;

  /** Two more than a decay has unknowns, and some for each unknown of a swing. */
  private static final int FEWEST_FOR_A_DECAY = 5;

  private static final int FEWEST_FOR_A_SWING = 20;

  /** Half the way between two of the frequencies that are tried. */
  private static final double HERTZ_RATIO = 1.06;

  /** Values that are tried on each side of the best one. */
  private static final int SIDE = 4;

  private static final double SINGULAR = 1e-12;

  /** A stretch within one code of the converter spreads less than the noise, but tells no more. */
  private static final double LEAST_VARIANCE_SHARE = 0.25;

  /** A motor that runs on slips from the mains frequency downwards. */
  private static final double[] FREQUENCY_SHARES = {1.0, 0.95, 0.9, 0.85, 0.8, 0.72};

  private static final double SHORTEST_ALTERNATING_DECAY_SECONDS = 3e-3;

  /** A shorter stretch tells no decay and no frequency of an alternating residue. */
  private static final double ALTERNATING_CYCLES = 0.25;

  private static final double USUAL_DECAY_SECONDS = 30e-3;
  private static final double USUAL_SHARE = 0.93;

  private static final int ROUNDS = 3;
  private static final double HELD = ResidueShape.HELD;

  /**
   * What a level decays to is nothing, but for the offset of the instrument: a fit that lets it
   * decay to more is held to this.
   */
  private static final double LARGEST_REST_SHARE_OF_PEAK = 0.03;

  private final Recording recording;
  private final int from;
  private final int to;
  private final double reference;
  private final double[] t;
  private final double[] v;
  private final double noiseVolts;

  @SuppressWarnings("ArrayRecordComponent") // made for one call
  private record Solved(ResidueShape shape, double[] x, double meanSquare, double score) {}

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
  public static Residue fit(Recording recording, int from, int to, double noiseVolts) {
    return new ResidueFit(recording, from, to, noiseVolts).best();
  }

  private Residue best() {
    double span = spanSeconds();
    double nominalHertz = recording.task().nominalFrequencyHertz();
    Solved best = solve(new ResidueShape(HELD, 0));
    if (t.length >= FEWEST_FOR_A_DECAY) {
      best = better(best, bestDecay(span, 0, SHORTEST_DECAY_SECONDS));
    }
    if (t.length >= FEWEST_FOR_A_SWING && span > ALTERNATING_CYCLES / nominalHertz) {
      Solved alternating = best;
      for (double share : FREQUENCY_SHARES) {
        alternating =
            better(
                alternating,
                bestDecay(span, share * nominalHertz, SHORTEST_ALTERNATING_DECAY_SECONDS));
      }
      best = better(alternating, solve(new ResidueShape(HELD, nominalHertz)));
    }
    if (t.length >= FEWEST_FOR_A_DECAY && span <= ALTERNATING_CYCLES / nominalHertz) {
      Solved swinging = solve(new ResidueShape(USUAL_DECAY_SECONDS, USUAL_SHARE * nominalHertz));
      best = better(swinging, best.shape.decay() == HELD ? best : refined(best));
      return residue(best);
    }
    return residue(best.shape.decay() == HELD ? best : refined(best));
  }

  private double spanSeconds() {
    return (to - from) * recording.time().intervalSeconds();
  }

  private Solved bestDecay(double span, double hertz, double shortest) {
    Solved best = solve(new ResidueShape(shortest, hertz));
    for (double decay = shortest * DECAY_RATIO;
        decay < Math.min(ResidueShape.LONGEST_DECAY_SECONDS, LONGEST_DECAY_SPANS * span);
        decay *= DECAY_RATIO) {
      best = better(best, solve(new ResidueShape(decay, hertz)));
    }
    return best;
  }

  private static Solved better(Solved one, Solved other) {
    return other.score < one.score ? other : one;
  }

  private Solved refined(Solved coarse) {
    Solved best = coarse;
    double decayRatio = DECAY_RATIO;
    double hertzRatio = HERTZ_RATIO;
    for (int round = 0; round < ROUNDS; round++) {
      ResidueShape shape = best.shape;
      double decay =
          lowest(shape.decay(), decayRatio, d -> solve(new ResidueShape(d, shape.hertz())).score);
      ResidueShape decayed = new ResidueShape(decay, shape.hertz());
      best = better(best, solve(decayed));
      if (shape.hertz() > 0) {
        double hertz =
            lowest(shape.hertz(), hertzRatio, h -> solve(new ResidueShape(decay, h)).score);
        best = better(best, solve(new ResidueShape(decay, hertz)));
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
    for (int k = -SIDE; k <= SIDE; k++) {
      double tried = x * Math.pow(ratio, (double) k / SIDE);
      double s = k == 0 ? bestScore : score.applyAsDouble(tried);
      if (s < bestScore) {
        bestScore = s;
        best = tried;
      }
    }
    return best;
  }

  /** Linear unknowns: an offset and a decaying level, or a decaying cosine and sine. */
  private Solved solve(ResidueShape shape) {
    int columns = shape.columns();
    double[][] normal = new double[columns][columns];
    double[] right = new double[columns];
    double[] row = new double[columns];
    double squares = 0;
    for (int k = 0; k < t.length; k++) {
      shape.fill(row, t[k]);
      squares += v[k] * v[k];
      for (int p = 0; p < columns; p++) {
        right[p] += row[p] * v[k];
        for (int q = 0; q < columns; q++) {
          normal[p][q] += row[p] * row[q];
        }
      }
    }
    double[] x = right.clone();
    double[][] eliminated = new double[columns][];
    Arrays.setAll(eliminated, p -> normal[p].clone());
    if (!FewEquations.solve(eliminated, x, SINGULAR)) {
      return new Solved(shape, new double[columns], squares, Double.POSITIVE_INFINITY);
    }
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
        t.length * Math.log(meanSquare + LEAST_VARIANCE_SHARE * noiseVolts * noiseVolts)
            + shape.parameters() * Math.log(t.length);
    return new Solved(
        shape,
        x,
        meanSquare,
        shape.isPlausible(x, recording.peakVolts(), spanSeconds()) ? score : Double.MAX_VALUE);
  }

  private Residue residue(Solved best) {
    ResidueShape shape = best.shape;
    double spread = Math.sqrt(best.meanSquare * t.length / Math.max(1, t.length - shape.columns()));
    double[] x = best.x;
    if (shape.isHum()) {
      return new Residue(reference, x[0], HELD, shape.hertz(), x[1], x[2], spread, to);
    }
    if (shape.hertz() > 0) {
      return new Residue(reference, 0, shape.decay(), shape.hertz(), x[0], x[1], spread, to);
    }
    return shape.decay() == HELD
        ? Residue.level(x[0], spread, to)
        : new Residue(reference, x[0], shape.decay(), 0, x[1], 0, spread, to);
  }
}
