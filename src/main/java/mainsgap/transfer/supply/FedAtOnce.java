package mainsgap.transfer.supply;

/**
 * Tells a load that another supply feeds from the moment at which the supply before is left: mains
 * whose voltage or phase has stepped, or an output that takes over. For half a cycle and more its
 * voltage is that supply's, of about nominal height, at another angle; what a motor or a capacitor
 * leaves on a load decays within that time.
 */
public final class FedAtOnce {
  /** A shorter stretch of a decay is no other than that of a sine. */
  private static final double SHORTEST_CYCLES = 0.5;

  /** Where the supply before is left is not known better where another one takes over. */
  private static final double LATER_CYCLES = 0.25;

  /** Lower than this is a sag, or a motor that runs on; higher is a surge. */
  private static final double LEAST_SHARE_OF_PEAK = 0.8;

  private static final double MOST_SHARE_OF_PEAK = 1.3;

  private static final double EXPLAINED_SHARE_OF_PEAK = 0.012;
  private static final double EXPLAINED_NOISES = 1.5;

  /** Another supply's frequency may differ by so much. */
  private static final double[] FREQUENCY_SHARES = {0.99, 0.995, 1, 1.005, 1.01};

  private final Recording recording;
  private final Supply before;
  private final double offset;

  /** A sine in a stretch, by its cosine and sine amplitudes from the start of the record's axis. */
  private record Phasor(double cosine, double sine) {
    double amplitude() {
      return Math.hypot(cosine, sine);
    }

    double angle() {
      return Math.atan2(cosine, sine);
    }
  }

  public FedAtOnce(Recording recording, Supply before) {
    this.recording = recording;
    this.before = before;
    this.offset = before.harmonics().offsetVolts();
  }

  /**
   * Whether another supply feeds from a sample on, or from soon after it, for a cycle or up to
   * another sample.
   */
  public boolean isFed(int from, int to) {
    int later = from + (int) (LATER_CYCLES * recording.samplesPerCycle());
    boolean isLong = to - later >= recording.samplesPerCycle();
    return isFedFrom(from, to) || (isLong && isFedFrom(later, to));
  }

  private boolean isFedFrom(int from, int to) {
    int end = Math.min(to, from + (int) Math.ceil(recording.samplesPerCycle()));
    if (end - from < SHORTEST_CYCLES * recording.samplesPerCycle()) {
      return false;
    }
    double most =
        Math.max(
            EXPLAINED_SHARE_OF_PEAK * recording.peakVolts(),
            EXPLAINED_NOISES * before.usualSpreadVolts());
    for (double share : FREQUENCY_SHARES) {
      if (misfitVolts(from, end, share) < most) {
        return true;
      }
    }
    return false;
  }

  /** What the supply before, moved in angle and height, leaves of the samples; RMS. */
  private double misfitVolts(int from, int to, double frequencyShare) {
    double[] supplied = moved(from, to, frequencyShare, 0);
    double[] found = new double[to - from];
    for (int k = 0; k < found.length; k++) {
      found[k] = recording.volts()[from + k] - offset;
    }
    double omega = 2 * Math.PI * frequencyShare * before.harmonics().frequencyHertz();
    Phasor as = phasor(from, found, omega);
    Phasor was = phasor(from, supplied, omega);
    double height = as.amplitude() / recording.peakVolts();
    if (height < LEAST_SHARE_OF_PEAK || height > MOST_SHARE_OF_PEAK) {
      return Double.POSITIVE_INFINITY;
    }
    double ratio = as.amplitude() / was.amplitude();
    double[] other = moved(from, to, frequencyShare, (as.angle() - was.angle()) / omega);
    double squares = 0;
    for (int k = 0; k < found.length; k++) {
      double off = found[k] - ratio * other[k];
      squares += off * off;
    }
    return Math.sqrt(squares / found.length);
  }

  /** The supply before as it would be at another frequency, and later by some seconds. */
  private double[] moved(int from, int to, double frequencyShare, double seconds) {
    double[] volts = new double[to - from];
    double middle = recording.time().secondsAt(0.5 * (from + to));
    for (int k = 0; k < volts.length; k++) {
      double at = recording.time().secondsAt(from + k);
      volts[k] = before.model().voltsAt(middle + frequencyShare * (at - middle) + seconds) - offset;
    }
    return volts;
  }

  private Phasor phasor(int from, double[] volts, double omega) {
    double cc = 0;
    double cs = 0;
    double ss = 0;
    double cv = 0;
    double sv = 0;
    for (int k = 0; k < volts.length; k++) {
      double angle = omega * recording.time().secondsAt(from + k);
      double cos = Math.cos(angle);
      double sin = Math.sin(angle);
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
