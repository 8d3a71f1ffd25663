package mainsgap.transfer.event;

import java.util.List;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Supply;
import mainsgap.transfer.supply.SupplyBreaks;
import org.jspecify.annotations.Nullable;

/**
 * Finds a supply that comes back after a break for longer than contacts bounce, and breaks once
 * more: the first break is the event, with its return there, and the other is a further one.
 */
public final class CameBack {
  /** A break that begins earlier after a make is bounce. */
  private static final double BOUNCE_CYCLES = 1;

  /** Mains that was away for a moment only has not wandered. */
  private static final double FITTED_CYCLES = 2.5;

  /** What lies so close to a break is left out of the fit. */
  private static final double GUARD_SECONDS = 1.5e-3;

  private CameBack() {}

  /**
   * The supply before where it feeds again between two breaks; null where it does not.
   *
   * @param departure from which the first break begins
   * @param settled the supply that feeds in the end; null where none does
   */
  public static @Nullable Supply between(
      Recording recording, Supply before, int departure, @Nullable Supply settled) {
    double cycle = recording.samplesPerCycle();
    int first = (int) Math.max(0, departure - cycle);
    int end = settled == null ? recording.length() : settled.from();
    SupplyBreaks follower = new SupplyBreaks(recording, before);
    SupplyBreaks.Followed followed = follower.upTo(end, first);
    List<SupplyBreaks.Break> breaks = followed.breaks();
    if (breaks.isEmpty() || breaks.get(0).from() > departure + cycle) {
      return null;
    }
    int k = 0;
    while (k + 1 < breaks.size()
        && breaks.get(k + 1).from() - breaks.get(k).to() < BOUNCE_CYCLES * cycle) {
      k++;
    }
    int madeAt = breaks.get(k).to();
    int left = k + 1 < breaks.size() ? breaks.get(k + 1).from() : followed.leftAt();
    if (left - madeAt < BOUNCE_CYCLES * cycle) {
      return null;
    }
    boolean isOther = settled == null || isBefore(recording, before, settled, madeAt, left);
    boolean breaksAgain =
        k + 1 < breaks.size()
            || follower.between(left, settled == null ? null : new SupplyBreaks(recording, settled))
                != null;
    return isOther && breaksAgain ? again(recording, before, madeAt, left) : null;
  }

  /** Fitted where that is long enough to tell how it went on; else as it was. */
  private static Supply again(Recording recording, Supply before, int madeAt, int left) {
    int guard = recording.samplesIn(GUARD_SECONDS);
    boolean isLong = left - madeAt > FITTED_CYCLES * recording.samplesPerCycle();
    return isLong
        ? Supply.fit(recording, madeAt + guard, left - guard, before.model().frequencyHertz())
        : new Supply(before.model(), before.harmonics(), madeAt, left);
  }

  /** Whether it is the supply before that feeds, and not that of the end, which comes near it. */
  private static boolean isBefore(
      Recording recording, Supply before, Supply settled, int from, int to) {
    return before.spreadIn(recording, from, to) < settled.spreadIn(recording, from, to);
  }
}
