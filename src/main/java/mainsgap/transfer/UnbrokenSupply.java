package mainsgap.transfer;

import java.util.Locale;
import mainsgap.signal.HarmonicFit;
import mainsgap.signal.HarmonicModel;
import mainsgap.signal.Waveform;
import org.jspecify.annotations.Nullable;

/**
 * Judges a recording in which the output shows no gap: the mains channel, or a change of the output
 * itself, proves that mains was lost; without proof it cannot be told from a missed trigger.
 */
final class UnbrokenSupply {
  /** Frequencies are compared over so many cycles at each end. */
  private static final double CYCLES = 8;

  /** Mains itself wanders by less than this in the seconds of a record. */
  private static final double FREQUENCY_STEP_HERTZ = 0.1;

  /** Cycles that leave more than this of a fit are not all of one supply. */
  private static final double UNSTEADY_SHARE_OF_PEAK = 0.02;

  private static final double UNSTEADY_NOISES = 1.5;

  private static final double PHASE_STEP_DEGREES = 5;

  /** A record that would hide a longer gap than this proves nothing. */
  private static final double LONGEST_HIDDEN_MILLIS = 3;

  /** A mains channel that is disturbed more often is not looked at further. */
  private static final int MOST_SPIKES = 40;

  /** The cycle after a spike differs from it once more. */
  private static final double SPIKE_CYCLES = 1.2;

  private static final double LOST_SHARE_OF_NOMINAL = 0.4;

  private final Recording recording;
  private final HarmonicModel start;
  private final @Nullable Waveform mains;
  private final int lastPassedOver;

  /**
   * Takes what is known.
   *
   * @param lastPassedOver the last departure that was no event; -1 where there was none
   */
  UnbrokenSupply(
      Recording recording, HarmonicModel start, @Nullable Waveform mains, int lastPassedOver) {
    this.recording = recording;
    this.start = start;
    this.mains = mains;
    this.lastPassedOver = lastPassedOver;
  }

  /** The outcome where the output never departs from the supply before. */
  Outcome outcome() {
    Double mainsLost = mainsLossSeconds();
    int span = (int) Math.min(recording.length() / 2.0, CYCLES * recording.samplesPerCycle());
    HarmonicModel first = fit(0, span);
    HarmonicModel last = fit(recording.length() - span, recording.length());
    double stepHertz = last.frequencyHertz() - first.frequencyHertz();
    if (mainsLost != null) {
      return noInterruption(
          mainsLost, "the mains channel shows the loss while the output goes on", first, last);
    }
    if (Math.abs(stepHertz) > FREQUENCY_STEP_HERTZ && isSteady(first) && isSteady(last)) {
      return noInterruption(
          recording.time().secondsAt(recording.length() / 2.0),
          String.format(
              Locale.ROOT,
              "the output's frequency changed from %.3f Hz to %.3f Hz",
              first.frequencyHertz(),
              last.frequencyHertz()),
          first,
          last);
    }
    if (lastPassedOver >= 0) {
      throw new NoEventException(
          String.format(
              Locale.ROOT,
              "the output is disturbed at %.1f ms of the time axis, but a gap is not shown"
                  + " there: look at the trace, and watch mains on a second channel",
              1e3 * recording.time().secondsAt(lastPassedOver)));
    }
    throw new NoEventException(
        "the output shows no gap, and nothing else in the record proves that mains was"
            + " lost, so it cannot be told from a missed trigger: watch mains on a second channel,"
            + " or check that the switch was opened while the record ran");
  }

  /**
   * The outcome where the output goes over to {@code after} with no gap between, about then; null
   * where nothing shows that mains was lost.
   */
  @Nullable Outcome changedTo(@Nullable Supply after, double changeSeconds) {
    Double mainsLost = mainsLossSeconds();
    if (after == null) {
      return null;
    }
    double seconds = mainsLost != null ? mainsLost : changeSeconds;
    double phase =
        SupplySteps.wrapped(
            after.harmonics().angleDegreesAt(seconds) - start.angleDegreesAt(seconds));
    double stepHertz = after.harmonics().frequencyHertz() - start.frequencyHertz();
    boolean isChanged =
        Math.abs(phase) >= PHASE_STEP_DEGREES || Math.abs(stepHertz) > FREQUENCY_STEP_HERTZ;
    if (mainsLost == null && !isChanged) {
      return null;
    }
    String proof =
        mainsLost != null
            ? "the mains channel shows the loss while the output goes on"
            : String.format(
                Locale.ROOT,
                "the output's phase changed by %.1f degrees and its frequency by %.3f Hz without a"
                    + " gap",
                phase,
                stepHertz);
    return noInterruption(seconds, proof, start, after.harmonics());
  }

  /** A sag in its cycles bends the frequency of a fit, and shows in what the fit leaves. */
  private boolean isSteady(HarmonicModel fitted) {
    double usual = UNSTEADY_NOISES * start.noiseVolts();
    return fitted.noiseVolts() < Math.max(UNSTEADY_SHARE_OF_PEAK * recording.peakVolts(), usual);
  }

  private HarmonicModel fit(int from, int to) {
    return HarmonicFit.fit(
        recording.volts(), recording.time(), from, to, start.frequencyHertz(), 9, true);
  }

  private @Nullable Double mainsLossSeconds() {
    if (mains == null) {
      return null;
    }
    Recording watched = Recording.of(mains, recording.time(), recording.task());
    double period = recording.time().sampleRateHertz() / start.frequencyHertz();
    double threshold =
        Departure.thresholdVolts(watched, Math.min(start.noiseVolts(), 0.05 * watched.peakVolts()));
    int index = Departure.find(watched, 0, watched.length(), period, threshold);
    for (int k = 0; k < MOST_SPIKES && index >= 0; k++) {
      if (isLost(watched, index, (int) period)) {
        return recording.time().secondsAt(index);
      }
      int from = index + (int) (SPIKE_CYCLES * period);
      index = Departure.find(watched, from, watched.length(), period, threshold);
    }
    return null;
  }

  /** A loss, or a restoration, changes what is on the mains channel for good; a spike does not. */
  private boolean isLost(Recording watched, int index, int cycle) {
    double before = watched.rmsVolts(Math.max(0, index - cycle), index);
    int last = watched.length() - cycle;
    if (last < index) {
      return false;
    }
    double after = watched.rmsVolts(last, watched.length());
    return Math.abs(after - before) > LOST_SHARE_OF_NOMINAL * recording.task().nominalVolts();
  }

  private Outcome noInterruption(
      double seconds, String proof, HarmonicModel first, HarmonicModel last) {
    double visibleMillis = shortestVisibleMillis(first);
    if (isDisturbedSince(seconds) || visibleMillis > LONGEST_HIDDEN_MILLIS) {
      throw new CannotMeasureException(
          "mains was lost and the output is disturbed, but no gap can be made out in it, nor"
              + " excluded: look at the trace, and connect a resistive load beside this one");
    }
    double phase =
        SupplySteps.wrapped(last.angleDegreesAt(seconds) - first.angleDegreesAt(seconds));
    return new NoInterruption(
        recording.task().event(),
        visibleMillis,
        proof,
        seconds,
        first.angleDegreesAt(seconds),
        new Supplies(
            first.frequencyHertz(),
            1e3 * (last.frequencyHertz() - first.frequencyHertz()),
            100 * (last.amplitudeVolts() - first.amplitudeVolts()) / recording.peakVolts(),
            phase));
  }

  /** Whether a disturbance that was passed over lies where mains was lost, or after it. */
  private boolean isDisturbedSince(double seconds) {
    return lastPassedOver >= 0
        && recording.time().secondsAt(lastPassedOver) > seconds - recording.task().cycleSeconds();
  }

  /**
   * The gap that would have been seen wherever it fell. Centred on a zero crossing a gap moves the
   * voltage least, by {@code A sin(w g / 2)} at its ends; there it must pass the threshold of the
   * search for one averaging time.
   */
  private double shortestVisibleMillis(HarmonicModel supply) {
    double threshold = Departure.thresholdVolts(recording, supply.noiseVolts());
    double share = Math.min(1, threshold / supply.amplitudeVolts());
    double averaging = Departure.averagingSamples(recording) * recording.time().intervalSeconds();
    double gapSeconds =
        2 * (Math.asin(share) / (2 * Math.PI * supply.frequencyHertz()) + averaging);
    return gapSeconds * 1e3;
  }
}
