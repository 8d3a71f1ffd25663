package mainsgap.transfer.outcome;

import java.util.Locale;
import mainsgap.signal.Event;
import org.jspecify.annotations.Nullable;

/**
 * Mains was lost and the load was not fed again in the record: a result, never a refusal.
 *
 * @param event the change of supply that was begun
 * @param lossSeconds the loss on the capture's own time axis (first opening)
 * @param lastOpeningSeconds the last opening of the mains contact on the same axis
 * @param atLeastMillis the gap that the record shows: from the loss to its end, or to what may be a
 *     return
 * @param uncertaintyMillis half-width of the 95 % interval of {@code atLeastMillis}
 * @param pointOnWaveDegrees the angle of the supply before at the loss, 0 to 360
 * @param deadMillis time within the record, from the loss on, under 10 % of nominal peak
 * @param supplies what the supply before says
 * @param comesBackTooLate whether a voltage comes back, too near to the record's end to be judged
 * @param budget of {@code uncertaintyMillis}, line by line; null where it was not kept
 * @param others what the channels beside the output tell
 */
public record NoReturn(
    Event event,
    double lossSeconds,
    double lastOpeningSeconds,
    double atLeastMillis,
    double uncertaintyMillis,
    double pointOnWaveDegrees,
    double deadMillis,
    Supplies supplies,
    boolean comesBackTooLate,
    @Nullable UncertaintyBudget budget,
    OtherChannels others)
    implements Outcome {

  /** Nothing was watched but the output. */
  public NoReturn(
      Event event,
      double lossSeconds,
      double lastOpeningSeconds,
      double atLeastMillis,
      double uncertaintyMillis,
      double pointOnWaveDegrees,
      double deadMillis,
      Supplies supplies,
      boolean comesBackTooLate,
      @Nullable UncertaintyBudget budget) {
    this(
        event,
        lossSeconds,
        lastOpeningSeconds,
        atLeastMillis,
        uncertaintyMillis,
        pointOnWaveDegrees,
        deadMillis,
        supplies,
        comesBackTooLate,
        budget,
        OtherChannels.NONE);
  }

  /** The same with what the other channels tell, and the last opening that they leave. */
  public NoReturn with(OtherChannels found, double openingSeconds) {
    return new NoReturn(
        event,
        lossSeconds,
        openingSeconds,
        atLeastMillis,
        uncertaintyMillis,
        pointOnWaveDegrees,
        deadMillis,
        supplies,
        comesBackTooLate,
        budget,
        found);
  }

  @Override
  public Kind kind() {
    return Kind.NO_RETURN;
  }

  @Override
  public String sentence() {
    return String.format(
        Locale.ROOT,
        (comesBackTooLate
                ? "the voltage comes back too late in the record to be judged"
                : "no return in the record")
            + ": longer than %.2f ms",
        atLeastMillis - uncertaintyMillis);
  }
}
