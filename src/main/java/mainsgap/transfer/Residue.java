package mainsgap.transfer;

import java.util.List;
import mainsgap.signal.TimeAxis;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.linear.LUDecomposition;

/**
 * What is left on the load while nothing feeds it: a held level, a level that decays, or the
 * decaying alternating voltage of a motor that runs on. {@code offset + e^(-t/decay) (cosine
 * cos(wt) + sine sin(wt))}, t from {@code referenceSeconds}.
 */
record Residue(
    double referenceSeconds,
    double offsetVolts,
    double decaySeconds,
    double frequencyHertz,
    double cosineVolts,
    double sineVolts,
    double spreadVolts) {

  /** More samples than this do not move the fit. */
  private static final int MOST_SAMPLES = 1_500;

  private static final double[] DECAYS_SECONDS = {
    0.2e-3, 0.4e-3, 0.8e-3, 1.5e-3, 3e-3, 6e-3, 12e-3, 25e-3, 60e-3, 200e-3
  };

  /** A motor that runs on slips from the mains frequency downwards. */
  private static final double[] FREQUENCY_SHARES = {1.0, 0.97, 0.94, 0.9, 0.85, 0.78, 0.7};

  /** A window shorter than this share of a cycle can't tell an alternating residue. */
  private static final double ALTERNATING_CYCLES = 0.25;

  static Residue level(double volts, double spreadVolts) {
    return new Residue(0, volts, 1, 0, 0, 0, spreadVolts);
  }

  double voltsAt(double seconds) {
    if (cosineVolts == 0 && sineVolts == 0) {
      return offsetVolts;
    }
    double t = seconds - referenceSeconds;
    double angle = 2 * Math.PI * frequencyHertz * t;
    return offsetVolts
        + Math.exp(-t / decaySeconds)
            * (cosineVolts * Math.cos(angle) + sineVolts * Math.sin(angle));
  }

  /**
   * Fits the family that explains the samples at {@code indices} (ascending) best for its number of
   * parameters.
   *
   * @param noiseVolts below which a smaller spread says nothing
   */
  static Residue fit(
      double[] volts,
      TimeAxis time,
      List<Integer> indices,
      double nominalHertz,
      double noiseVolts) {
    int stride = Math.max(1, indices.size() / MOST_SAMPLES);
    int n = (indices.size() + stride - 1) / stride;
    double reference = time.secondsAt(indices.get(0));
    double[] t = new double[n];
    double[] v = new double[n];
    for (int k = 0; k < n; k++) {
      int index = indices.get(k * stride);
      t[k] = time.secondsAt(index) - reference;
      v[k] = volts[index];
    }
    double spanSeconds = t[n - 1];
    Choice choice = new Choice(reference, t, v, noiseVolts);
    choice.offer(1, 0, 1);
    if (n >= 8) {
      for (double decay : DECAYS_SECONDS) {
        if (decay > 2 * time.intervalSeconds() && decay < 4 * spanSeconds) {
          choice.offer(decay, 0, 2);
        }
      }
    }
    if (n >= 20 && spanSeconds > ALTERNATING_CYCLES / nominalHertz) {
      for (double share : FREQUENCY_SHARES) {
        for (double decay : DECAYS_SECONDS) {
          if (decay > 2e-3) {
            choice.offer(decay, share * nominalHertz, 3);
          }
        }
      }
    }
    return choice.best();
  }

  private static final class Choice {
    private final double reference;
    private final double[] t;
    private final double[] v;
    private final double noiseVolts;
    private double bestScore = Double.POSITIVE_INFINITY;
    private Residue best = level(0, 0);

    Choice(double reference, double[] t, double[] v, double noiseVolts) {
      this.reference = reference;
      this.t = t;
      this.v = v;
      this.noiseVolts = noiseVolts;
    }

    /** Fits {@code columns} linear unknowns: offset, then the decaying cosine, then the sine. */
    void offer(double decay, double frequency, int columns) {
      double[][] normal = new double[columns][columns];
      double[] right = new double[columns];
      double[] row = new double[columns];
      for (int k = 0; k < t.length; k++) {
        fillRow(row, t[k], decay, frequency);
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
        return;
      }
      double[] x = solver.solve(new ArrayRealVector(right, false)).toArray();
      double squares = 0;
      for (int k = 0; k < t.length; k++) {
        fillRow(row, t[k], decay, frequency);
        double deviation = v[k];
        for (int p = 0; p < columns; p++) {
          deviation -= x[p] * row[p];
        }
        squares += deviation * deviation;
      }
      int free = Math.max(1, t.length - columns);
      double spread = Math.sqrt(squares / free);
      double floored = squares / t.length + noiseVolts * noiseVolts / 4;
      int parameters = columns == 1 ? 1 : columns == 2 ? 3 : 5;
      double score = t.length * Math.log(floored) + parameters * Math.log(t.length);
      if (score < bestScore) {
        bestScore = score;
        best =
            new Residue(
                reference,
                x[0],
                decay,
                frequency,
                columns > 1 ? x[1] : 0,
                columns > 2 ? x[2] : 0,
                spread);
      }
    }

    private static void fillRow(double[] row, double t, double decay, double frequency) {
      row[0] = 1;
      if (row.length > 1) {
        double envelope = Math.exp(-t / decay);
        double angle = 2 * Math.PI * frequency * t;
        row[1] = envelope * Math.cos(angle);
        if (row.length > 2) {
          row[2] = envelope * Math.sin(angle);
        }
      }
    }

    Residue best() {
      return best;
    }
  }
}
