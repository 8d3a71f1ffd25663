package mainsgap.transfer.supply;

import mainsgap.signal.HarmonicFit;
import mainsgap.signal.HarmonicModel;
import org.jspecify.annotations.Nullable;

/**
 * Looks at an output that shows no gap for a step of its frequency or of its harmonics: another
 * supply has taken over. Mains that wanders changes as well, but by no step: its change is spread
 * over the record.
 */
public final class ChangedSupply {
  /** The record is looked at in so many parts, and a step is over within two of them. */
  private static final int PARTS = 6;

  private static final int STEP_PARTS = 2;
  private static final double STEP_SHARE = 0.8;

  /** Fewer cycles tell no frequency. */
  private static final double FEWEST_CYCLES = 2;

  private static final int ORDERS = 9;

  /** Mains itself wanders by less than this in the seconds of a record. */
  private static final double FREQUENCY_STEP_HERTZ = 0.1;

  /** The harmonics of mains change by less, as a root sum of squares, with what others switch. */
  private static final double HARMONIC_STEP_SHARE = 0.02;

  /** Cycles that leave more than this of a fit are not all of one supply. */
  private static final double UNSTEADY_SHARE_OF_PEAK = 0.02;

  private static final double UNSTEADY_NOISES = 1.5;

  private final Recording recording;
  private final HarmonicModel start;
  private final HarmonicModel[] parts;

  /** Looks at the whole record; {@code start} is its first cycles. */
  public ChangedSupply(Recording recording, HarmonicModel start) {
    this.recording = recording;
    this.start = start;
    double samples = recording.length() / (double) PARTS;
    boolean isLong = samples >= FEWEST_CYCLES * recording.samplesPerCycle();
    this.parts = new HarmonicModel[isLong ? PARTS : 0];
    for (int k = 0; k < parts.length; k++) {
      parts[k] =
          HarmonicFit.fit(
              recording.volts(),
              recording.time(),
              (int) (k * samples),
              (int) ((k + 1) * samples),
              start.frequencyHertz(),
              ORDERS,
              true);
    }
  }

  /** Whether the frequency steps. */
  public boolean hasFrequencyStep() {
    return frequencyStepSeconds() != null;
  }

  /** About when it steps, on the capture's own time axis; null where it does not. */
  public @Nullable Double frequencyStepSeconds() {
    double[][] hertz = new double[parts.length][1];
    for (int k = 0; k < parts.length; k++) {
      hertz[k][0] = parts[k].frequencyHertz();
    }
    return isSteadyAtEnds() ? stepSeconds(hertz, FREQUENCY_STEP_HERTZ) : null;
  }

  /**
   * About when the harmonics step, on the capture's own time axis; null where they do not, or where
   * a few do not make the cycle.
   */
  public @Nullable Double harmonicStepSeconds() {
    double[][] harmonics = new double[parts.length][];
    for (int k = 0; k < parts.length; k++) {
      harmonics[k] = harmonics(parts[k]);
    }
    double most = UNSTEADY_SHARE_OF_PEAK * recording.peakVolts();
    boolean areAll =
        parts.length > 0 && parts[0].noiseVolts() < most && parts[PARTS - 1].noiseVolts() < most;
    return areAll ? stepSeconds(harmonics, HARMONIC_STEP_SHARE) : null;
  }

  /** A sag in its cycles bends the frequency of a fit, and shows in what the fit leaves. */
  private boolean isSteadyAtEnds() {
    return parts.length > 0 && isSteady(parts[0]) && isSteady(parts[PARTS - 1]);
  }

  private boolean isSteady(HarmonicModel fitted) {
    double usual = UNSTEADY_NOISES * start.noiseVolts();
    return fitted.noiseVolts() < Math.max(UNSTEADY_SHARE_OF_PEAK * recording.peakVolts(), usual);
  }

  private @Nullable Double stepSeconds(double[][] values, double least) {
    double whole = distance(values[0], values[PARTS - 1]);
    if (whole <= least) {
      return null;
    }
    for (int k = 0; k + STEP_PARTS < PARTS; k++) {
      if (distance(values[k], values[k + STEP_PARTS]) >= STEP_SHARE * whole) {
        return recording.time().secondsAt((k + 1.5) * recording.length() / PARTS);
      }
    }
    return null;
  }

  private static double distance(double[] one, double[] other) {
    double squares = 0;
    for (int k = 0; k < one.length; k++) {
      squares += (one[k] - other[k]) * (one[k] - other[k]);
    }
    return Math.sqrt(squares);
  }

  /** Harmonics as shares of the fundamental, their angles counted from its own zero. */
  private static double[] harmonics(HarmonicModel model) {
    double zero = Math.atan2(model.cosineVolts()[0], model.sineVolts()[0]);
    double[] shares = new double[2 * (model.orders() - 1)];
    for (int order = 2; order <= model.orders(); order++) {
      double cosine = model.cosineVolts()[order - 1];
      double sine = model.sineVolts()[order - 1];
      double share = Math.hypot(cosine, sine) / model.amplitudeVolts();
      double angle = Math.atan2(cosine, sine) - order * zero;
      shares[2 * (order - 2)] = share * Math.cos(angle);
      shares[2 * (order - 2) + 1] = share * Math.sin(angle);
    }
    return shares;
  }
}
