package mainsgap.transfer;

import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.FitException;
import mainsgap.signal.HarmonicModel;
import mainsgap.signal.HeldSamples;
import mainsgap.transfer.gap.FurtherBreaks;
import mainsgap.transfer.outcome.CannotMeasureException;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.NoEventException;
import mainsgap.transfer.outcome.NoInterruption;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Refused;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Supply;
import mainsgap.transfer.supply.SupplyBreaks;
import org.jspecify.annotations.Nullable;

/**
 * The measurement of one capture, in the order of a test report's method section: the supply
 * before, the place at which it is left, the supply after, what feeds the load sample by sample,
 * the two instants, the figures between them. Pure: the capture is left unchanged.
 */
public final class TransferMeasurement {
  private static final String LATER =
      "the output goes over to another supply without a gap, and is interrupted after that";

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
    FoundEvent found =
        new EventSearch(output, start, capture.waveform(ChannelRole.MAINS).orElse(null)).found();
    Supply after = found.after();
    return found.outcome() instanceof NoInterruption none && after != null
        ? toTheEnd(found, none, after, capture, task)
        : found;
  }

  /** An output that is taken over without a gap may be interrupted later. */
  private static FoundEvent toTheEnd(
      FoundEvent found,
      NoInterruption none,
      Supply takenOver,
      Capture capture,
      MeasuringTask task) {
    Recording output = Recording.of(capture.output(), capture.time(), task);
    FurtherBreaks breaks = new FurtherBreaks(output, takenOver);
    double fitted = output.time().secondsAt(takenOver.from());
    if (breaks.from(fitted, fitted).count() > 0) {
      return laterThan(found, takenOver, capture, task);
    }
    FoundEvent next = next(takenOver, output, capture, task);
    if (next != null) {
      return next;
    }
    if (breaks.from(none.eventSeconds(), none.eventSeconds()).count() > 0) {
      throw new CannotMeasureException(
          LATER + ", too soon to be measured: look at the trace, and judge it there");
    }
    return found;
  }

  /**
   * What took over may be mains that stepped, and is left in its turn: too short a gap is no break
   * of it. Null where it feeds up to the end, or nothing is measured where it is left.
   */
  private static @Nullable FoundEvent next(
      Supply takenOver, Recording output, Capture capture, MeasuringTask task) {
    int from = takenOver.from();
    if (new SupplyBreaks(output, takenOver).from(from, from).leftAt() < 0) {
      return null;
    }
    try {
      FoundEvent next = found(capture.part(from, capture.time().length()), task);
      return next.outcome() instanceof NoInterruption ? null : next;
    } catch (CannotMeasureException | FitException e) {
      return null;
    }
  }

  /** An output that is taken over without a gap, and then interrupted, is measured there. */
  private static FoundEvent laterThan(
      FoundEvent found, Supply takenOver, Capture capture, MeasuringTask task) {
    try {
      FoundEvent later = found(capture.part(takenOver.from(), capture.time().length()), task);
      return later.mainsLoss() == null ? later.with(found.mainsLoss()) : later;
    } catch (CannotMeasureException | FitException e) {
      throw new CannotMeasureException(LATER + ", where it cannot be measured: " + e.getMessage());
    }
  }
}
