package mainsgap.transfer.gap;

import mainsgap.transfer.outcome.FurtherInterruptions;
import mainsgap.transfer.supply.Departure;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.SettledSupply;
import mainsgap.transfer.supply.Supply;
import mainsgap.transfer.supply.SupplyBreaks;

/**
 * Finds how often a load that is fed again, and has been for a cycle, is left once more up to the
 * end of the record: by the supply that came back, and by any other that follows it.
 */
public final class FurtherBreaks {
  /** A record in which more supplies take turns is not looked at further. */
  private static final int MOST_SUPPLIES = 50;

  private final Recording recording;
  private final Supply supply;

  public FurtherBreaks(Recording recording, Supply supply) {
    this.recording = recording;
    this.supply = supply;
  }

  /**
   * The breaks that begin after a time.
   *
   * @param returnSeconds from when on the supply feeds the load, or comes up to it
   */
  public FurtherInterruptions from(double seconds, double returnSeconds) {
    int counted = (int) Math.ceil(recording.time().indexAt(seconds));
    int first = Math.max(0, (int) Math.ceil(recording.time().indexAt(returnSeconds)));
    FurtherInterruptions found = FurtherInterruptions.NONE;
    SupplyBreaks breaks = new SupplyBreaks(recording, supply);
    for (int supplies = 0; supplies < MOST_SUPPLIES; supplies++) {
      SupplyBreaks.Followed followed = breaks.from(first, counted);
      for (SupplyBreaks.Break one : followed.breaks()) {
        found = with(found, one);
      }
      int left = followed.leftAt();
      if (left < 0) {
        return found;
      }
      Supply next = SettledSupply.after(recording, left, recording.task().nominalFrequencyHertz());
      SupplyBreaks nextBreaks = next == null ? null : new SupplyBreaks(recording, next);
      SupplyBreaks.Break between = breaks.between(left, nextBreaks);
      if (nextBreaks == null) {
        return between == null ? found : open(found, between);
      }
      found = between == null ? found : with(found, between);
      first = between == null ? left : between.to();
      counted = first;
      breaks = nextBreaks;
    }
    return found;
  }

  /** Adds a break in which the record ends: it is at least as long as it is seen. */
  private FurtherInterruptions open(FurtherInterruptions found, SupplyBreaks.Break last) {
    FurtherInterruptions with = with(found, last);
    return new FurtherInterruptions(
        with.count(), with.longestMillis(), with.uncertaintyMillis(), true);
  }

  /** Adds a break, which began and ended somewhere between where it was seen and where not. */
  private FurtherInterruptions with(FurtherInterruptions found, SupplyBreaks.Break one) {
    double toMillis = 1e3 * recording.time().intervalSeconds();
    int unseen = one.unseen();
    double millis = (one.to() - one.from() + unseen / 2.0) * toMillis;
    int width = Departure.averagingSamples(recording);
    double uncertaintyMillis = (unseen / 2.0 + width) * toMillis;
    Double longest = found.longestMillis();
    boolean isLonger = longest == null || millis > longest;
    return new FurtherInterruptions(
        found.count() + 1,
        isLonger ? (Double) millis : longest,
        isLonger ? uncertaintyMillis : found.uncertaintyMillis());
  }
}
