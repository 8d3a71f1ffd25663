package mainsgap.transfer;

import java.util.Locale;
import mainsgap.signal.Capture;
import mainsgap.signal.FitException;
import mainsgap.transfer.gap.FurtherBreaks;
import mainsgap.transfer.outcome.CannotMeasureException;
import mainsgap.transfer.outcome.NoEventException;
import mainsgap.transfer.outcome.NoInterruption;
import mainsgap.transfer.supply.FedAllAlong;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Supply;
import mainsgap.transfer.supply.SupplyBreaks;
import org.jspecify.annotations.Nullable;

/**
 * Follows an output that another supply took over without a gap up to the end of the record: it may
 * be interrupted later, and what took over may have been mains that stepped.
 */
final class TakenOver {
  private static final String LATER =
      "the output goes over to another supply without a gap, and is interrupted after that";

  private final Capture capture;
  private final Recording output;
  private final FoundEvent found;

  /** By a further supply, with no gap either. */
  private boolean isTakenOverAgain;

  /** Of an event that was found in the output of a capture. */
  TakenOver(Capture capture, Recording output, FoundEvent found) {
    this.capture = capture;
    this.output = output;
    this.found = found;
  }

  /**
   * The event itself, or the interruption that follows.
   *
   * @throws CannotMeasureException where one follows that cannot be measured
   */
  FoundEvent toTheEnd() {
    Supply takenOver = found.after();
    if (takenOver == null || !(found.outcome() instanceof NoInterruption none)) {
      return found;
    }
    FurtherBreaks breaks = new FurtherBreaks(output, takenOver);
    double fitted = output.time().secondsAt(takenOver.from());
    if (breaks.from(fitted, fitted).count() > 0) {
      return interruptedLater(takenOver);
    }
    FoundEvent left = leftInTurn(takenOver);
    if (left != null) {
      return left;
    }
    if (breaks.from(none.eventSeconds(), none.eventSeconds()).count() > 0) {
      throw new CannotMeasureException(
          LATER + ", too soon to be measured: look at the trace, and judge it there");
    }
    Supply before = found.before();
    if (before != null) {
      requireFed(before, takenOver);
    }
    return found;
  }

  /** A gap in which the load keeps some voltage, or a short one, is neither proved nor excluded. */
  private void requireFed(Supply before, Supply takenOver) {
    FedAllAlong fed = new FedAllAlong(output, before, takenOver);
    int left = fed.leftByBoth();
    if (left >= 0) {
      throw notExcluded(left, "neither that nor the one before");
    }
    int again = isTakenOverAgain ? -1 : fed.changedAgain();
    if (again >= 0) {
      throw notExcluded(again, "not what it was a cycle earlier");
    }
  }

  private CannotMeasureException notExcluded(int sample, String found) {
    return new CannotMeasureException(
        String.format(
            Locale.ROOT,
            "the output goes over to another supply, and at %.1f ms of the time axis it is %s, but"
                + " no gap can be made out there, nor excluded: look at the trace, and connect a"
                + " resistive load beside this one",
            1e3 * output.time().secondsAt(sample),
            found));
  }

  private FoundEvent interruptedLater(Supply takenOver) {
    try {
      return foundFrom(takenOver);
    } catch (CannotMeasureException | FitException e) {
      throw cannotMeasure(e);
    }
  }

  private static CannotMeasureException cannotMeasure(RuntimeException e) {
    return new CannotMeasureException(LATER + ", where it cannot be measured: " + e.getMessage());
  }

  /**
   * What comes where the supply that took over is left in its turn, by a gap too short to be a
   * break of it; null where it feeds up to the end, or no event shows where it is left.
   */
  private @Nullable FoundEvent leftInTurn(Supply takenOver) {
    int from = takenOver.from();
    boolean isLeft = new SupplyBreaks(output, takenOver).from(from, from).leftAt() >= 0;
    try {
      FoundEvent next = foundFrom(takenOver);
      isTakenOverAgain = next.outcome() instanceof NoInterruption;
      return isTakenOverAgain ? null : next;
    } catch (NoEventException e) {
      return null;
    } catch (CannotMeasureException | FitException e) {
      if (isLeft) {
        throw cannotMeasure(e);
      }
      return null;
    }
  }

  private FoundEvent foundFrom(Supply takenOver) {
    Capture rest = capture.part(takenOver.from(), capture.time().length());
    FoundEvent later = TransferMeasurement.found(rest, output.task());
    return later.mainsLoss() == null ? later.with(found.mainsLoss()) : later;
  }
}
