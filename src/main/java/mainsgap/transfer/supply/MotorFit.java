package mainsgap.transfer.supply;

import java.util.Arrays;

/**
 * Fits the voltage of a motor that runs on anew from each sample on: {@code e^(-t/T) (a cos + b sin
 * + t (c cos + d sin))}, the terms with t taking up what the decay T and the frequency of its
 * residue lack. Where no residue tells them, they are usual ones, and a and b alone are fitted.
 */
public final class MotorFit {
  /** Of the supply's frequency, of a motor that has just been left. */
  private static final double SLIP_SHARE = 0.93;

  private static final double USUAL_DECAY_SECONDS = 30e-3;

  /** Brings the terms with t near to those without. */
  private static final double PER_SECOND = 1e3;

  private static final double SINGULAR = 1e-12;

  private final Recording recording;
  private final int columns;
  private final double hertz;
  private final double decaySeconds;

  public MotorFit(Recording recording, Residue residue, double supplyHertz) {
    boolean told = residue.isMotor();
    this.recording = recording;
    this.columns = told ? 4 : 2;
    this.hertz = told ? residue.frequencyHertz() : SLIP_SHARE * supplyHertz;
    this.decaySeconds = told ? residue.decaySeconds() : USUAL_DECAY_SECONDS;
  }

  /** The amplitudes that are fitted. */
  public int columns() {
    return columns;
  }

  /**
   * The squared deviations that are left of samples i (inclusive) to {@code to} (exclusive), for
   * each i from {@code first} to {@code last}.
   */
  public double[] squares(int first, int last, int to) {
    double[] left = new double[last - first + 1];
    double[][] normal = new double[columns][columns];
    double[] right = new double[columns];
    double[] row = new double[columns];
    double squares = 0;
    double reference = recording.time().secondsAt((first + to) / 2.0);
    for (int i = to - 1; i >= first; i--) {
      double volts = recording.volts()[i];
      fill(row, recording.time().secondsAt(i) - reference);
      squares += volts * volts;
      for (int p = 0; p < columns; p++) {
        right[p] += row[p] * volts;
        for (int q = 0; q < columns; q++) {
          normal[p][q] += row[p] * row[q];
        }
      }
      if (i <= last) {
        left[i - first] = squares - explained(normal, right);
      }
    }
    return left;
  }

  private void fill(double[] row, double t) {
    double angle = 2 * Math.PI * hertz * t;
    double envelope = Math.exp(-t / decaySeconds);
    row[0] = envelope * Math.cos(angle);
    row[1] = envelope * Math.sin(angle);
    for (int p = 2; p < columns; p++) {
      row[p] = PER_SECOND * t * row[p - 2];
    }
  }

  private static double explained(double[][] normal, double[] right) {
    double[] x = right.clone();
    double[][] eliminated = new double[normal.length][];
    Arrays.setAll(eliminated, p -> normal[p].clone());
    if (!FewEquations.solve(eliminated, x, SINGULAR)) {
      return 0;
    }
    double explained = 0;
    for (int p = 0; p < x.length; p++) {
      explained += x[p] * right[p];
    }
    return explained;
  }
}
