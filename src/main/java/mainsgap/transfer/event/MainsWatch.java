package mainsgap.transfer.event;

import mainsgap.signal.Event;
import mainsgap.signal.FitException;
import mainsgap.signal.HarmonicFit;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.Waveform;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.supply.Departure;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.SampleNoise;
import org.jspecify.annotations.Nullable;

/**
 * Tells by the mains channel whether mains went the way of the event: lost before a loss, back
 * before a restoration. A channel at another level at the start tells nothing.
 */
public final class MainsWatch {
  /** A mains channel that is disturbed more often is not looked at further. */
  private static final int MOST_SPIKES = 40;

  /** The cycle after a spike differs from it once more. */
  private static final double SPIKE_CYCLES = 1.2;

  private static final double START_CYCLES = 2;

  /** It has changed too where it is back as it was after so long. */
  private static final double CHANGED_CYCLES = 2;

  /** From this share of nominal RMS on it is present, below the other it is not. */
  private static final double PRESENT_SHARE_OF_NOMINAL = 0.8;

  private static final double ABSENT_SHARE_OF_NOMINAL = 0.4;

  private final Event event;
  private final @Nullable Recording watched;
  private @Nullable Double changedSeconds;
  private boolean isLookedAt;

  public MainsWatch(@Nullable Waveform mains, TimeAxis time, MeasuringTask task) {
    this.event = task.event();
    this.watched = mains == null ? null : Recording.of(mains, time, task);
  }

  /** When mains went, on the capture's own time axis; null where that is not seen. */
  @Nullable Double changedSeconds() {
    if (!isLookedAt && watched != null) {
      changedSeconds = found(watched);
      isLookedAt = true;
    }
    return changedSeconds;
  }

  /** Whether the channel shows that mains stayed as it was, up to the record's end. */
  boolean isUnchanged() {
    if (watched == null) {
      return false;
    }
    int cycle = (int) Math.min(watched.length(), Math.ceil(watched.samplesPerCycle()));
    return isBefore(watched.rmsVolts(0, cycle))
        && isBefore(watched.rmsVolts(watched.length() - cycle, watched.length()))
        && changedSeconds() == null;
  }

  /** What it shows where the output goes on. */
  String proof() {
    return event == Event.LOSS
        ? "the mains channel shows the loss while the output goes on"
        : "the mains channel shows mains coming back while the output goes on";
  }

  private @Nullable Double found(Recording mains) {
    double period = mains.samplesPerCycle();
    double noise;
    try {
      int to = (int) Math.min(mains.length(), Math.ceil(START_CYCLES * period));
      double hertz = mains.task().nominalFrequencyHertz();
      if (event == Event.LOSS) {
        var start = HarmonicFit.fit(mains.volts(), mains.time(), 0, to, hertz, 1, true);
        period = mains.time().sampleRateHertz() / start.frequencyHertz();
        noise = SampleNoise.atMost(mains, start.noiseVolts());
      } else {
        noise = SampleNoise.atMost(mains, mains.rmsVolts(0, to));
      }
    } catch (FitException e) {
      return null;
    }
    double threshold = Departure.thresholdVolts(mains, noise);
    int index = Departure.find(mains, 0, mains.length(), period, threshold);
    for (int k = 0; k < MOST_SPIKES && index >= 0; k++) {
      if (isChanged(mains, index, (int) period)) {
        return mains.time().secondsAt(index);
      }
      int from = index + (int) (SPIKE_CYCLES * period);
      index = Departure.find(mains, from, mains.length(), period, threshold);
    }
    return null;
  }

  /**
   * A loss, or a restoration, changes what is on the mains channel for good or for some cycles; a
   * spike does not.
   */
  private boolean isChanged(Recording mains, int index, int cycle) {
    int last = mains.length() - cycle;
    int from = index + cycle;
    int to = (int) (from + CHANGED_CYCLES * cycle);
    return last >= index
        && isBefore(mains.rmsVolts(Math.max(0, index - cycle), index))
        && (isAfter(mains.rmsVolts(last, mains.length()))
            || (to <= mains.length() && isAfter(mains.rmsVolts(from, to))));
  }

  private boolean isBefore(double rmsVolts) {
    return event == Event.LOSS ? isPresent(rmsVolts) : isAbsent(rmsVolts);
  }

  private boolean isAfter(double rmsVolts) {
    return event == Event.LOSS ? isAbsent(rmsVolts) : isPresent(rmsVolts);
  }

  private boolean isPresent(double rmsVolts) {
    return watched != null && rmsVolts >= PRESENT_SHARE_OF_NOMINAL * watched.task().nominalVolts();
  }

  private boolean isAbsent(double rmsVolts) {
    return watched != null && rmsVolts <= ABSENT_SHARE_OF_NOMINAL * watched.task().nominalVolts();
  }
}
