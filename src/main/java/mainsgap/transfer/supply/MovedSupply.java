package mainsgap.transfer.supply;

import mainsgap.signal.HarmonicModel;

/** Moves a supply in angle and height, its harmonics with it, to samples that it may feed. */
public final class MovedSupply {
  private static final int MOST_SAMPLES = 2_000;

  /** From a few degrees off, the second step is exact. */
  private static final int STEPS = 3;

  private static final double DERIVATIVE_CYCLES = 1e-4;
  private static final double MOST_STEP_CYCLES = 0.05;
  private static final double SINGULAR = 1e-9;

  private final Recording recording;
  private final Supply supply;
  private final double offset;

  /**
   * How far it is moved.
   *
   * @param amplitudeVolts the peak of the fundamental then
   * @param ratio to the peak before
   * @param seconds by which it comes earlier
   * @param misfitVolts what it leaves of the samples; root mean square
   */
  public record Move(double amplitudeVolts, double ratio, double seconds, double misfitVolts) {}

  /** A sine in a stretch, by its cosine and sine amplitudes from the start of the record's axis. */
  private record Phasor(double cosine, double sine) {
    double amplitude() {
      return Math.hypot(cosine, sine);
    }

    double angle() {
      return Math.atan2(cosine, sine);
    }
  }

  public MovedSupply(Recording recording, Supply supply) {
    this.recording = recording;
    this.supply = supply;
    this.offset = supply.harmonics().offsetVolts();
  }

  /**
   * To samples {@code from} (inclusive) to {@code to} (exclusive), by least squares. More samples
   * than some thousands are thinned.
   *
   * @param frequencyShare of the supply's own frequency
   */
  public Move to(int from, int to, double frequencyShare) {
    int stride = Math.max(1, (to - from) / MOST_SAMPLES);
    double[] found = new double[(to - from + stride - 1) / stride];
    double[] at = new double[found.length];
    double middle = recording.time().secondsAt(0.5 * (from + to));
    for (int k = 0; k < found.length; k++) {
      found[k] = recording.volts()[from + k * stride] - offset;
      double seconds = recording.time().secondsAt(from + k * stride);
      at[k] = middle + frequencyShare * (seconds - middle);
    }
    double omega = 2 * Math.PI * supply.harmonics().frequencyHertz();
    Phasor as = phasor(at, found, omega);
    Phasor was = phasor(at, volts(at, 0), omega);
    double ratio = as.amplitude() / was.amplitude();
    double seconds =
        Math.IEEEremainder(as.angle() - was.angle(), 2 * Math.PI) / (omega * frequencyShare);
    return refined(at, found, ratio, seconds * frequencyShare, frequencyShare);
  }

  /** The fundamental alone is pulled by the harmonics of a short stretch: steps of Gauss-Newton. */
  private Move refined(
      double[] at, double[] found, double ratio, double turned, double frequencyShare) {
    double cycle = 1 / supply.harmonics().frequencyHertz();
    double apart = DERIVATIVE_CYCLES * cycle;
    double bestRatio = ratio;
    double bestTurned = turned;
    double[] shape = volts(at, turned);
    for (int step = 0; step < STEPS; step++) {
      double[] ahead = volts(at, bestTurned + apart);
      double ss = 0;
      double sd = 0;
      double dd = 0;
      double sv = 0;
      double dv = 0;
      for (int k = 0; k < found.length; k++) {
        double slope = bestRatio * (ahead[k] - shape[k]) / apart;
        double off = found[k] - bestRatio * shape[k];
        ss += shape[k] * shape[k];
        sd += shape[k] * slope;
        dd += slope * slope;
        sv += shape[k] * off;
        dv += slope * off;
      }
      double determinant = ss * dd - sd * sd;
      if (!(determinant > SINGULAR * ss * dd)) {
        break;
      }
      double most = MOST_STEP_CYCLES * cycle;
      double turn = (dv * ss - sv * sd) / determinant;
      bestRatio += (sv * dd - dv * sd) / determinant;
      bestTurned += Math.max(-most, Math.min(most, turn));
      shape = volts(at, bestTurned);
    }
    double squares = 0;
    for (int k = 0; k < found.length; k++) {
      double off = found[k] - bestRatio * shape[k];
      squares += off * off;
    }
    return new Move(
        bestRatio * supply.harmonics().amplitudeVolts(),
        bestRatio,
        bestTurned / frequencyShare,
        Math.sqrt(squares / found.length));
  }

  /** The supply so moved, as fitted in samples. */
  Supply by(Move move, int from, int to) {
    HarmonicModel was = supply.harmonics();
    double[] cosine = was.cosineVolts().clone();
    double[] sine = was.sineVolts().clone();
    for (int k = 0; k < cosine.length; k++) {
      cosine[k] *= move.ratio();
      sine[k] *= move.ratio();
    }
    HarmonicModel moved =
        new HarmonicModel(
            was.referenceSeconds() - move.seconds(),
            was.frequencyHertz(),
            offset,
            0,
            cosine,
            sine,
            was.noiseVolts(),
            was.noiseCorrelation());
    return new Supply(moved, moved, from, to);
  }

  /** The supply at times, earlier by some seconds. */
  private double[] volts(double[] at, double seconds) {
    double[] volts = new double[at.length];
    for (int k = 0; k < volts.length; k++) {
      volts[k] = supply.model().voltsAt(at[k] + seconds) - offset;
    }
    return volts;
  }

  private static Phasor phasor(double[] at, double[] volts, double omega) {
    double cc = 0;
    double cs = 0;
    double ss = 0;
    double cv = 0;
    double sv = 0;
    for (int k = 0; k < volts.length; k++) {
      double cos = Math.cos(omega * at[k]);
      double sin = Math.sin(omega * at[k]);
      cc += cos * cos;
      cs += cos * sin;
      ss += sin * sin;
      cv += cos * volts[k];
      sv += sin * volts[k];
    }
    double determinant = cc * ss - cs * cs;
    return new Phasor((cv * ss - sv * cs) / determinant, (sv * cc - cv * cs) / determinant);
  }
}
