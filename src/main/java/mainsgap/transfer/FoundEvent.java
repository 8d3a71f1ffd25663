package mainsgap.transfer;

import mainsgap.transfer.gap.StillLoad;
import mainsgap.transfer.outcome.CannotMeasureException;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.NoInterruption;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.supply.Supply;
import org.jspecify.annotations.Nullable;

/**
 * An outcome with the supplies that it was measured between.
 *
 * @param outcome what was measured of the output
 * @param before null where no event was found
 * @param after null where nothing feeds the load in the end, or no event was found
 * @param mainsLoss as the mains channel shows it; null where it does not
 */
record FoundEvent(
    Outcome outcome,
    @Nullable Supply before,
    @Nullable Supply after,
    @Nullable MainsLoss mainsLoss) {

  FoundEvent with(@Nullable MainsLoss loss) {
    return new FoundEvent(outcome, before, after, loss);
  }

  /**
   * The same, as far as the samples bear it out.
   *
   * @throws CannotMeasureException where nothing was interrupted, but the load lies still
   */
  FoundEvent heldAgainst(StillLoad still) {
    if (outcome instanceof NoInterruption) {
      still.requireNone();
    }
    return outcome instanceof Measured gap
        ? new FoundEvent(still.heldAgainst(gap), before, after, mainsLoss)
        : this;
  }

  FittedSupplies supplies() {
    return new FittedSupplies(
        before == null ? null : before.model(), after == null ? null : after.model());
  }
}
