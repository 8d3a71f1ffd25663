package mainsgap.transfer;

import mainsgap.signal.Capture;
import mainsgap.signal.FitException;
import mainsgap.signal.HeldSamples;
import mainsgap.signal.PeriodicModel;
import mainsgap.transfer.outcome.CannotMeasureException;
import mainsgap.transfer.outcome.MeasuringTask;
import org.jspecify.annotations.Nullable;

/**
 * The supplies of the output as the measurement fits them, for whoever draws them over the capture.
 * Each can be evaluated at any time on the capture's own axis; beyond the event it says what the
 * supply would have done.
 *
 * @param before the supply that the load was following; null where no event was found
 * @param after the supply that feeds the load at the end; null where none does, or no event was
 *     found
 */
public record FittedSupplies(@Nullable PeriodicModel before, @Nullable PeriodicModel after) {
  /** A capture that carries no event. */
  public static final FittedSupplies NONE = new FittedSupplies(null, null);

  /**
   * Fits the supplies of a capture. Pure, and as long as a measurement: the capture is measured
   * anew, so that what is drawn is what was measured with.
   *
   * @return {@link #NONE} where the capture is refused or holds no event; never null
   */
  public static FittedSupplies of(Capture capture, MeasuringTask task) {
    try {
      return TransferMeasurement.found(HeldSamples.once(capture), task).supplies();
    } catch (CannotMeasureException | FitException e) {
      return NONE;
    }
  }
}
