package mainsgap.transfer;

import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.FitException;
import mainsgap.signal.HarmonicModel;
import mainsgap.signal.HeldSamples;
import mainsgap.signal.Waveform;
import mainsgap.transfer.gap.StillLoad;
import mainsgap.transfer.outcome.CannotMeasureException;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.NoEventException;
import mainsgap.transfer.outcome.NoInterruption;
import mainsgap.transfer.outcome.NoReturn;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Refused;
import mainsgap.transfer.supply.Recording;

/**
 * The measurement of one capture, in the order of a test report's method section: the supply
 * before, the place at which it is left, the supply after, what feeds the load sample by sample,
 * the two instants, the figures between them; and last, whether the rest of the record bears that
 * out. Pure: the capture is left unchanged.
 */
public final class TransferMeasurement {

  private TransferMeasurement() {}

  /**
   * Measures a capture.
   *
   * @return {@link Refused} with its reason where the capture carries no measurement; never null
   */
  public static Outcome measure(Capture capture, MeasuringTask task) {
    try {
      Capture sampled = HeldSamples.once(capture);
      FoundEvent found = found(sampled, task);
      return new OtherChannelFigures(sampled, task, found.mainsLoss()).with(found.outcome());
    } catch (CannotMeasureException e) {
      return new Refused(String.valueOf(e.getMessage()), e instanceof NoEventException);
    } catch (FitException e) {
      return new Refused(
          "no supply can be fitted: " + e.getMessage() + ": is this a recording of mains?");
    }
  }

  /**
   * What the output tells, with the supplies that were fitted for it.
   *
   * @throws CannotMeasureException where the capture carries no measurement
   * @throws FitException where no supply can be fitted
   */
  static FoundEvent found(Capture capture, MeasuringTask task) {
    Recording output = Recording.of(capture.output(), capture.time(), task);
    HarmonicModel start = FirstCycles.of(output);
    double noise = FirstCycles.noiseVolts(output, start);
    StillLoad still = new StillLoad(output, start);
    NoReturn dead = still.toTheEnd();
    Waveform mains = capture.waveform(ChannelRole.MAINS).orElse(null);
    EventSearch search = new EventSearch(output, start, noise, mains);
    DisturbedEnds disturbed = new DisturbedEnds(output, noise, search, still);
    try {
      FoundEvent found = new TakenOver(capture, output, search.found()).toTheEnd();
      return dead != null && isOverBefore(dead, found.outcome(), task)
          ? new FoundEvent(dead, null, null, found.mainsLoss())
          : disturbed.insteadOf(found).heldAgainst(still);
    } catch (CannotMeasureException e) {
      if (dead != null && e instanceof NoEventException) {
        return new FoundEvent(dead, null, null, null);
      }
      FoundEvent gap = disturbed.first();
      if (gap == null) {
        throw e;
      }
      return gap.heldAgainst(still);
    }
  }

  /** Whether an outcome leaves out that the load lies still up to the end. */
  private static boolean isOverBefore(NoReturn still, Outcome outcome, MeasuringTask task) {
    if (outcome instanceof NoReturn found) {
      double shownTo = found.lossSeconds() + 1e-3 * found.atLeastMillis();
      return shownTo < still.lossSeconds() + task.cycleSeconds();
    }
    return outcome instanceof NoInterruption;
  }
}
