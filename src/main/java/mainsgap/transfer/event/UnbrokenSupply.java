package mainsgap.transfer.event;

import java.util.Locale;
import mainsgap.signal.HarmonicFit;
import mainsgap.signal.HarmonicModel;
import mainsgap.transfer.outcome.CannotMeasureException;
import mainsgap.transfer.outcome.NoEventException;
import mainsgap.transfer.outcome.NoInterruption;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Supplies;
import mainsgap.transfer.supply.ChangedSupply;
import mainsgap.transfer.supply.Departure;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.SampleNoise;
import mainsgap.transfer.supply.Supply;
import mainsgap.transfer.supply.SupplyDifferences;
import org.jspecify.annotations.Nullable;

/**
 * Judges a recording in which the output shows no gap: the mains channel, or a change of the output
 * itself, proves that mains was lost; without proof it cannot be told from a missed trigger.
 */
public final class UnbrokenSupply {
  /** Frequencies are compared over so many cycles at each end. */
  private static final double CYCLES = 8;

  private static final double PHASE_STEP_DEGREES = 5;

  /** A record that would hide a longer gap than this proves nothing. */
  private static final double LONGEST_HIDDEN_MILLIS = 3;

  /** A record that ends sooner does not show that the load stays fed. */
  private static final double FEWEST_CYCLES_AFTER = 3;

  private final Recording recording;
  private final HarmonicModel start;
  private final double noiseVolts;
  private final MainsWatch mains;
  private final Disturbance.@Nullable Stretch lastPassedOver;

  /**
   * Takes what is known.
   *
   * @param start the supply before
   * @param noiseVolts the standard deviation of one sample's noise that the search goes by
   * @param lastPassedOver the last disturbance that was no event; null where there was none
   */
  public UnbrokenSupply(
      Recording recording,
      HarmonicModel start,
      double noiseVolts,
      MainsWatch mains,
      Disturbance.@Nullable Stretch lastPassedOver) {
    this.recording = recording;
    this.start = start;
    this.noiseVolts = noiseVolts;
    this.mains = mains;
    this.lastPassedOver = lastPassedOver;
  }

  /** The outcome where the output never departs from the supply before. */
  public Outcome outcome() {
    int span = (int) Math.min(recording.length() / 2.0, CYCLES * recording.samplesPerCycle());
    HarmonicModel first = fit(0, span);
    HarmonicModel last = fit(recording.length() - span, recording.length());
    Double mainsChanged = mains.changedSeconds();
    if (mainsChanged != null) {
      return noInterruption(mainsChanged, mains.proof(), first, last);
    }
    if (mains.isUnchanged()) {
      throw new NoEventException(
          "the output shows no gap, and the mains channel shows no change: was the switch moved"
              + " while the record ran, and is the channel behind it?");
    }
    ChangedSupply stepped = new ChangedSupply(recording, start);
    Double frequency = stepped.frequencyStepSeconds();
    if (frequency != null) {
      return noInterruption(
          frequency,
          String.format(
              Locale.ROOT,
              "the output's frequency changed from %.3f Hz to %.3f Hz",
              first.frequencyHertz(),
              last.frequencyHertz()),
          first,
          last);
    }
    Double harmonics = stepped.harmonicStepSeconds();
    if (harmonics != null) {
      return noInterruption(harmonics, "the output's harmonics changed", first, last);
    }
    if (lastPassedOver != null) {
      throw new NoEventException(
          String.format(
              Locale.ROOT,
              "the output is disturbed at %.1f ms of the time axis, but a gap is not shown"
                  + " there: look at the trace, and watch mains on a second channel",
              1e3 * recording.time().secondsAt(lastPassedOver.from())));
    }
    throw new NoEventException(
        "the output shows no gap, and nothing else in the record proves that mains was"
            + " lost, so it cannot be told from a missed trigger: watch mains on a second channel,"
            + " or check that the switch was opened while the record ran");
  }

  /**
   * The outcome where the output goes over to {@code after} with no gap between, about then; null
   * where nothing shows that mains was lost, or where it is disturbed about then.
   */
  public @Nullable Outcome changedTo(@Nullable Supply after, double changeSeconds) {
    if (after == null || mains.isUnchanged()) {
      return null;
    }
    Double mainsChanged = mains.changedSeconds();
    double seconds = mainsChanged != null ? mainsChanged : changeSeconds;
    double phase =
        SupplyDifferences.wrapped(
            after.harmonics().angleDegreesAt(seconds) - start.angleDegreesAt(seconds));
    double stepHertz = after.harmonics().frequencyHertz() - start.frequencyHertz();
    boolean isChanged =
        Math.abs(phase) >= PHASE_STEP_DEGREES
            || new ChangedSupply(recording, start).hasFrequencyStep();
    if ((mainsChanged == null && !isChanged) || isDisturbedSince(seconds)) {
      return null;
    }
    String proof =
        mainsChanged != null
            ? mains.proof()
            : String.format(
                Locale.ROOT,
                "the output's phase changed by %.1f degrees and its frequency by %.3f Hz without a"
                    + " gap",
                phase,
                stepHertz);
    return noInterruption(seconds, proof, start, after.harmonics(), after.from());
  }

  private HarmonicModel fit(int from, int to) {
    return HarmonicFit.fit(
        recording.volts(), recording.time(), from, to, start.frequencyHertz(), 9, true);
  }

  private Outcome noInterruption(
      double seconds, String proof, HarmonicModel first, HarmonicModel last) {
    return noInterruption(seconds, proof, first, last, recording.length());
  }

  private Outcome noInterruption(
      double seconds, String proof, HarmonicModel first, HarmonicModel last, int lastFrom) {
    if (isDisturbedSince(seconds)) {
      throw new CannotMeasureException(
          "the supply changed and the output is disturbed then or later, but no gap can be made out"
              + " in it, nor excluded: look at the trace, and connect a resistive load beside this"
              + " one");
    }
    double visibleMillis =
        1e3 * Math.max(shortestGapSeconds(0, first), shortestGapSeconds(lastFrom, last));
    if (visibleMillis > LONGEST_HIDDEN_MILLIS) {
      throw new CannotMeasureException(
          String.format(
              Locale.ROOT,
              "the supply changed without a gap that shows, but in this noise, or where this voltage"
                  + " is low, one of up to %.1f ms could hide: record with less noise, or with a"
                  + " smaller range",
              visibleMillis));
    }
    double after = recording.time().secondsAt(recording.length()) - seconds;
    if (after < FEWEST_CYCLES_AFTER * recording.task().cycleSeconds()) {
      throw new CannotMeasureException(
          String.format(
              Locale.ROOT,
              "the record ends %.0f ms after the change of supply, within which the load is not"
                  + " interrupted, but it may be later: record at least %.0f cycles more after the"
                  + " trigger",
              Math.max(0, 1e3 * after),
              FEWEST_CYCLES_AFTER));
    }
    double phase =
        SupplyDifferences.wrapped(last.angleDegreesAt(seconds) - first.angleDegreesAt(seconds));
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

  /** The shortest gap that would have been seen in two cycles of a supply, that begin then. */
  private double shortestGapSeconds(int begins, HarmonicModel supply) {
    int from = Math.min(begins, recording.length() - SampleNoise.inTwoCycles(recording));
    int to = from + SampleNoise.inTwoCycles(recording);
    double here = SampleNoise.volts(recording, from, supply.frequencyHertz());
    double noise = Math.max(noiseVolts, SampleNoise.atMost(recording, here));
    return Departure.shortestGapSeconds(recording, noise, from, to);
  }

  /** Whether a disturbance that was passed over lies where mains was lost, or after it. */
  private boolean isDisturbedSince(double seconds) {
    return lastPassedOver != null
        && recording.time().secondsAt(lastPassedOver.to())
            > seconds - recording.task().cycleSeconds();
  }
}
