package mainsgap.transfer;

import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.NoInterruption;
import mainsgap.transfer.supply.KeptVoltage;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Supply;
import org.jspecify.annotations.Nullable;

/**
 * A gap that hides where another supply seems to take over at once, because the supply before was
 * fitted over both of them.
 */
final class HiddenGap {
  /** From where such a fit shows the step to where it is (own choice). */
  private static final double AT_ONCE_SECONDS = 1e-3;

  private final Recording watched;
  private final NoInterruption none;
  private final Supply supply;

  private HiddenGap(Recording watched, NoInterruption none, Supply supply) {
    this.watched = watched;
    this.none = none;
    this.supply = supply;
  }

  /** Null where the fit ends before the step, or too little is left of the supply before it. */
  static @Nullable HiddenGap before(Recording watched, Supply before, NoInterruption none) {
    int to = sampleAt(watched, none.eventSeconds() - KeptVoltage.LONGEST_SECONDS);
    boolean isShort =
        to - before.from() < EventFit.FEWEST_CYCLES_FITTED * watched.samplesPerCycle();
    if (to >= before.to() || isShort) {
      return null;
    }
    double hertz = before.model().frequencyHertz();
    return new HiddenGap(watched, none, Supply.fit(watched, before.from(), to, hertz));
  }

  /** The supply before, fitted anew up to where a gap may begin. */
  Supply supply() {
    return supply;
  }

  /** The sample at which the other supply seems to take over. */
  int step() {
    return sampleAt(watched, none.eventSeconds());
  }

  /** Whether what was found with the new fit is a gap there that the other supply does not feed. */
  boolean isShownBy(FoundEvent found) {
    Supply after = found.after();
    if (after == null
        || !(found.outcome() instanceof Measured gap)
        || gap.transferMillis() >= 1e3 * KeptVoltage.LONGEST_SECONDS
        || Math.abs(gap.returnSeconds() - none.eventSeconds()) >= AT_ONCE_SECONDS) {
      return false;
    }
    int from = sampleAt(watched, gap.lossSeconds());
    int to = sampleAt(watched, gap.returnSeconds());
    double fed = KeptVoltage.FED_SHARE_OF_PEAK * watched.peakVolts() + after.usualSpreadVolts();
    return after.spreadIn(watched, from, to) > fed;
  }

  private static int sampleAt(Recording watched, double seconds) {
    return (int) watched.time().indexAt(seconds);
  }
}
