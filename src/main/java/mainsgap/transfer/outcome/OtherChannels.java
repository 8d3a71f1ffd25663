package mainsgap.transfer.outcome;

import org.jspecify.annotations.Nullable;

/**
 * What the channels beside the output tell of one gap; null where a channel was not watched or
 * cannot tell.
 *
 * @param holdThroughMillis the output's departure minus the loss of mains: how long the unit held
 *     the load before anything was seen there
 * @param secondLeg the gap on the second leg of a split output
 * @param loadCurrentAfterPercent the load's RMS current over the last cycles of the record, in per
 *     cent of that before the loss
 * @param markerSeconds when the marker changed, on the capture's own time axis
 */
public record OtherChannels(
    @Nullable Double holdThroughMillis,
    @Nullable SecondLeg secondLeg,
    @Nullable Double loadCurrentAfterPercent,
    @Nullable Double markerSeconds) {

  /** A load that draws half of its current again is taken to have ridden through (own choice). */
  private static final double RODE_THROUGH_FROM_PERCENT = 50;

  /** Nothing was watched but the output. */
  public static final OtherChannels NONE = new OtherChannels(null, null, null, null);

  /**
   * What the second leg shows.
   *
   * @param transferMillis its transfer time, 0 where it was not interrupted; null where it did not
   *     return
   * @param atLeastMillis where it did not return in the record: what the record shows
   * @param uncertaintyMillis half-width of the 95 % interval of the one that is there; where it was
   *     not interrupted the shortest gap that would have been seen
   * @param commonMillis the common part of that
   * @param furtherInterruptions its breaks after the return
   * @param refused why it could not be measured; null where it was
   */
  public record SecondLeg(
      @Nullable Double transferMillis,
      @Nullable Double atLeastMillis,
      double uncertaintyMillis,
      double commonMillis,
      FurtherInterruptions furtherInterruptions,
      @Nullable String refused) {

    /** What was measured of it, as if it were the output. */
    public static SecondLeg of(Outcome outcome) {
      return switch (outcome.kind()) {
        case MEASURED -> of((Measured) outcome);
        case NO_RETURN -> of((NoReturn) outcome);
        case NO_INTERRUPTION ->
            new SecondLeg(
                0.0,
                null,
                ((NoInterruption) outcome).shortestVisibleMillis(),
                0,
                FurtherInterruptions.NONE,
                null);
        case REFUSED ->
            new SecondLeg(
                null, null, 0, 0, FurtherInterruptions.NONE, ((Refused) outcome).reason());
      };
    }

    private static SecondLeg of(Measured gap) {
      return new SecondLeg(
          gap.transferMillis(),
          null,
          gap.uncertaintyMillis(),
          gap.budget().commonExpandedMillis(),
          gap.furtherInterruptions(),
          null);
    }

    private static SecondLeg of(NoReturn gap) {
      return new SecondLeg(
          null, gap.atLeastMillis(), gap.uncertaintyMillis(), 0, FurtherInterruptions.NONE, null);
    }

    /** Whether mains was lost, and it saw nothing of it. */
    public boolean isUninterrupted() {
      return transferMillis != null && transferMillis == 0;
    }
  }

  /** Whether the load draws its current again at the end of the record; null where unknown. */
  public @Nullable Boolean loadRodeThrough() {
    return loadCurrentAfterPercent == null
        ? null
        : (Boolean) (loadCurrentAfterPercent >= RODE_THROUGH_FROM_PERCENT);
  }
}
