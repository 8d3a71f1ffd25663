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

  /** Half of what counts as a departure: a fit takes up a part of the gap that lies in it. */
  private static final double LEFT_SHARE_OF_PEAK = 0.04;

  /** Averages of noise alone go so far less than once in a record of 10^7. */
  private static final double LEFT_NOISES = 6;

  private final Recording recording;
  private final HarmonicModel start;
  private final HarmonicModel[] parts;

  /** Looks at the whole record; {@code start} is its first cycles. */
  public ChangedSupply(Recording recording, HarmonicModel start) {
    this.recording = recording;
    this.start = start;
    boolean isLong = firstOf(1) >= FEWEST_CYCLES * recording.samplesPerCycle();
    this.parts = new HarmonicModel[isLong ? PARTS : 0];
    for (int k = 0; k < parts.length; k++) {
      parts[k] =
          HarmonicFit.fit(
              recording.volts(),
              recording.time(),
              firstOf(k),
              firstOf(k + 1),
              start.frequencyHertz(),
              ORDERS,
              true);
    }
  }

  private int firstOf(int part) {
    return (int) ((long) part * recording.length() / PARTS);
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

  /** A sag or a gap in its cycles bends the frequency of a fit, and shows in what that leaves. */
  private boolean isSteadyAtEnds() {
    return parts.length > 0 && isSteady(0) && isSteady(PARTS - 1);
  }

  private boolean isSteady(int part) {
    double usual = UNSTEADY_NOISES * start.noiseVolts();
    double most = Math.max(UNSTEADY_SHARE_OF_PEAK * recording.peakVolts(), usual);
    return parts[part].noiseVolts() < most && !isLeft(part);
  }

  /**
   * Whether averages of a part lie away from its fit, and not as far a cycle before or after them,
   * as the notches of a supply do.
   */
  private boolean isLeft(int part) {
    int width = Departure.averagingSamples(recording);
    int cycle = (int) Math.round(recording.samplesPerCycle() / width);
    double noise = Math.min(parts[0].noiseVolts(), parts[PARTS - 1].noiseVolts());
    double away =
        Math.max(
            LEFT_SHARE_OF_PEAK * recording.peakVolts(), LEFT_NOISES * noise / Math.sqrt(width));
    double[] deviations = averages(part, width);
    for (int k = 0; k < deviations.length; k++) {
      if (Math.abs(deviations[k]) > away
          && !isNear(deviations, k - cycle, deviations[k], away)
          && !isNear(deviations, k + cycle, deviations[k], away)) {
        return true;
      }
    }
    return false;
  }

  /** Of what the fit of a part leaves. */
  private double[] averages(int part, int width) {
    double[] averages = new double[(firstOf(part + 1) - firstOf(part)) / width];
    for (int k = 0; k < averages.length; k++) {
      for (int i = firstOf(part) + k * width; i < firstOf(part) + (k + 1) * width; i++) {
        double at = recording.time().secondsAt(i);
        averages[k] += (recording.volts()[i] - parts[part].voltsAt(at)) / width;
      }
    }
    return averages;
  }

  /** Whether one of the averages about a place is like another one: a cycle is no whole number. */
  private static boolean isNear(double[] averages, int place, double volts, double within) {
    for (int k = Math.max(0, place - 1); k <= Math.min(averages.length - 1, place + 1); k++) {
      if (Math.abs(averages[k] - volts) < within) {
        return true;
      }
    }
    return false;
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
