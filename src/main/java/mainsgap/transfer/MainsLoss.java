package mainsgap.transfer;

import mainsgap.signal.Event;
import mainsgap.signal.FitException;
import mainsgap.signal.HarmonicFit;
import mainsgap.signal.HarmonicModel;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.Waveform;
import mainsgap.transfer.edge.Edge;
import mainsgap.transfer.event.PassedOver;
import mainsgap.transfer.instant.GapEnds;
import mainsgap.transfer.instant.GapTopology;
import mainsgap.transfer.outcome.CannotMeasureException;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.supply.Departure;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.SampleNoise;
import mainsgap.transfer.supply.Supply;
import org.jspecify.annotations.Nullable;

/**
 * The loss of mains as the channel downstream of the mains switch shows it.
 *
 * @param lossSeconds the first opening of the switch, on the capture's own time axis
 * @param lastOpeningSeconds its last opening; the same where it did not bounce
 */
record MainsLoss(double lossSeconds, double lastOpeningSeconds) {
  private static final double START_CYCLES = 2;
  private static final double CYCLES_BEFORE = 10;
  private static final double FEWEST_CYCLES_FITTED = 1.5;

  /** A channel that is disturbed more often shows no loss that can be located. */
  private static final int MOST_DEPARTURES = 40;

  private static final double GUARD_SECONDS = 1.5e-3;

  /** Below this share of nominal RMS there is no mains to be lost. */
  private static final double PRESENT_SHARE_OF_NOMINAL = 0.8;

  /** The channel of a lost supply falls by at least this share of nominal RMS, for good. */
  private static final double LOST_SHARE_OF_NOMINAL = 0.3;

  /** It is lost too where it stays away for so long, though it comes back within the record. */
  private static final double ABSENT_CYCLES = 2;

  private static final double ABSENT_SHARE_OF_NOMINAL = 0.2;

  /**
   * Finds the loss.
   *
   * @return null where the event is no loss, or the channel does not show one that can be located
   */
  static @Nullable MainsLoss find(Waveform mains, TimeAxis time, MeasuringTask task) {
    if (task.event() != Event.LOSS) {
      return null;
    }
    try {
      return find(Recording.of(mains, time, task));
    } catch (CannotMeasureException | FitException e) {
      return null;
    }
  }

  private static @Nullable MainsLoss find(Recording mains) {
    int startTo = (int) Math.min(mains.length(), START_CYCLES * mains.samplesPerCycle());
    double nominal = mains.task().nominalVolts();
    if (mains.rmsVolts(0, startTo) < PRESENT_SHARE_OF_NOMINAL * nominal) {
      return null;
    }
    HarmonicModel start =
        HarmonicFit.fit(
            mains.volts(), mains.time(), 0, startTo, mains.task().nominalFrequencyHertz(), 1, true);
    double period = mains.time().sampleRateHertz() / start.frequencyHertz();
    double noise = SampleNoise.atMost(mains, start.noiseVolts());
    Recording watched = mains;
    int from = 0;
    for (int departures = 0; departures < MOST_DEPARTURES; departures++) {
      double threshold = Departure.thresholdVolts(watched, noise);
      int departure = Departure.find(watched, from, watched.length(), period, threshold);
      Supply before =
          departure < START_CYCLES * period
              ? null
              : supplyBefore(watched, departure, start.frequencyHertz());
      if (before == null) {
        return null;
      }
      PassedOver passed = PassedOver.disturbance(watched, before, departure);
      if (passed == null) {
        return isLost(watched, departure, (int) period)
            ? of(PassedOver.cleared(watched, before, departure), before, departure)
            : null;
      }
      watched = passed.recording();
      from = passed.from();
    }
    return null;
  }

  private static @Nullable Supply supplyBefore(Recording mains, int departure, double hertz) {
    double period = mains.time().sampleRateHertz() / hertz;
    int to = departure - mains.samplesIn(GUARD_SECONDS);
    int from = (int) Math.max(0, to - CYCLES_BEFORE * period);
    if (to - from < FEWEST_CYCLES_FITTED * period) {
      return null;
    }
    return Supply.fit(mains, from, to, hertz);
  }

  private static @Nullable MainsLoss of(Recording mains, Supply before, int departure) {
    GapEnds ends =
        new GapEnds(mains, before, null, new GapTopology(mains, before, null, departure));
    if (!ends.hasGap()) {
      return null;
    }
    Edge loss = ends.loss();
    return new MainsLoss(loss.seconds(), ends.lastOpening(loss).seconds());
  }

  private static boolean isLost(Recording mains, int departure, int cycle) {
    double nominal = mains.task().nominalVolts();
    double before = mains.rmsVolts(Math.max(0, departure - cycle), departure);
    double atEnd = mains.rmsVolts(Math.max(departure, mains.length() - cycle), mains.length());
    int from = departure + cycle;
    int to = from + (int) (ABSENT_CYCLES * cycle);
    boolean isAbsent =
        to <= mains.length() && mains.rmsVolts(from, to) < ABSENT_SHARE_OF_NOMINAL * nominal;
    return isAbsent || before - atEnd > LOST_SHARE_OF_NOMINAL * nominal;
  }
}
