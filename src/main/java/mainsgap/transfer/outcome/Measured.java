package mainsgap.transfer.outcome;

import mainsgap.signal.Event;
import org.jspecify.annotations.Nullable;

/**
 * A gap with both its ends.
 *
 * @param event the change of supply
 * @param lossSeconds the loss on the capture's own time axis (first opening)
 * @param lastOpeningSeconds the last opening of the mains contact on the same axis
 * @param firstReturnSeconds the instant at which the load was first fed again, same axis
 * @param returnSeconds the instant from which the load is fed without a break, same axis
 * @param transferMillis return minus loss: the gap that the load sees
 * @param budget the uncertainty of {@code transferMillis}, line by line
 * @param furtherInterruptions breaks later than one cycle after the return
 * @param deadMillis time between loss and return under 10 % of nominal peak
 * @param usableMillis loss to the instant after which the voltage stays within 10 % of nominal peak
 *     of the settled supply; null where it never does
 * @param recoveryMillis loss to the start of the first cycle from which Urms(1/2) stays within 10 %
 *     of nominal; null where it never does
 * @param pointOnWaveDegrees the angle of the supply before at the loss, 0 to 360
 * @param supplies what the fitted supplies say
 * @param cleanness how cleanly the voltage comes back; null where it was not taken
 * @param others what the channels beside the output tell
 */
public record Measured(
    Event event,
    double lossSeconds,
    double lastOpeningSeconds,
    double firstReturnSeconds,
    double returnSeconds,
    double transferMillis,
    UncertaintyBudget budget,
    FurtherInterruptions furtherInterruptions,
    double deadMillis,
    @Nullable Double usableMillis,
    @Nullable Double recoveryMillis,
    double pointOnWaveDegrees,
    Supplies supplies,
    @Nullable Cleanness cleanness,
    OtherChannels others)
    implements Outcome {

  /** The same with what the other channels tell, and the last opening that they leave. */
  public Measured with(OtherChannels found, double openingSeconds) {
    return new Measured(
        event,
        lossSeconds,
        openingSeconds,
        firstReturnSeconds,
        returnSeconds,
        transferMillis,
        budget,
        furtherInterruptions,
        deadMillis,
        usableMillis,
        recoveryMillis,
        pointOnWaveDegrees,
        supplies,
        cleanness,
        found);
  }

  /** The same with other breaks behind its return. */
  public Measured with(FurtherInterruptions further) {
    return new Measured(
        event,
        lossSeconds,
        lastOpeningSeconds,
        firstReturnSeconds,
        returnSeconds,
        transferMillis,
        budget,
        further,
        deadMillis,
        usableMillis,
        recoveryMillis,
        pointOnWaveDegrees,
        supplies,
        cleanness,
        others);
  }

  /** Half-width of the 95 % interval of the transfer time, in milliseconds. */
  public double uncertaintyMillis() {
    return budget.expandedMillis();
  }

  @Override
  public Kind kind() {
    return Kind.MEASURED;
  }

  @Override
  public String sentence() {
    return String.format(
        java.util.Locale.ROOT, "%.3f ms ± %.3f ms", transferMillis, uncertaintyMillis());
  }
}
