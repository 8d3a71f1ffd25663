package mainsgap.transfer.gap;

import mainsgap.signal.CycleRms;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Supply;
import org.jspecify.annotations.Nullable;

/** Figures between and after the located ends of a gap. */
final class GapFigures {
  private static final double DEAD_SHARE_OF_PEAK = 0.1;
  private static final double USABLE_SHARE_OF_PEAK = 0.1;

  /** Noise alone leaves a band of so many standard deviations seldom. */
  private static final double NOISE_FACTOR = 5;

  /** The steps of a fitted cycle are known to this. */
  private static final double OWN_STEP_SECONDS = 0.1e-3;

  private static final double RECOVERED_SHARE_OF_NOMINAL = 0.1;

  /** A residue that swings through zero is under the dead level for less than this. */
  private static final double CROSSING_SECONDS = 3e-3;

  private final Recording recording;
  private final double lossSeconds;
  private final double returnSeconds;

  GapFigures(Recording recording, double lossSeconds, double returnSeconds) {
    this.recording = recording;
    this.lossSeconds = lossSeconds;
    this.returnSeconds = returnSeconds;
  }

  /**
   * Total time between loss and return under 10 % of nominal peak, without the crossings of a
   * residue that swings from one side to the other.
   */
  double deadMillis() {
    int from = (int) Math.ceil(Math.max(0, recording.time().indexAt(lossSeconds)));
    int to = (int) Math.min(recording.length(), Math.ceil(recording.time().indexAt(returnSeconds)));
    double level = DEAD_SHARE_OF_PEAK * recording.peakVolts();
    int dead = 0;
    int runStart = -1;
    for (int i = from; i <= to; i++) {
      boolean low = i < to && Math.abs(recording.volts()[i]) < level;
      if (low && runStart < 0) {
        runStart = i;
      } else if (!low && runStart >= 0) {
        if (!isCrossing(runStart, i, from, to)) {
          dead += i - runStart;
        }
        runStart = -1;
      }
    }
    return dead * recording.time().intervalSeconds() * 1e3;
  }

  private boolean isCrossing(int start, int end, int from, int to) {
    return start > from
        && end < to
        && end - start < recording.samplesIn(CROSSING_SECONDS)
        && recording.volts()[start - 1] * recording.volts()[end] < 0;
  }

  /**
   * Loss to the instant after which the voltage stays within 10 % of nominal peak of the settled
   * supply; null where it has not settled by the end of that supply's fit.
   */
  @Nullable Double usableMillis(Supply after) {
    double noise = NOISE_FACTOR * after.usualSpreadVolts();
    return steadyMillis(after, Math.max(USABLE_SHARE_OF_PEAK * recording.peakVolts(), noise));
  }

  /** The same within another share of nominal peak; null too where noise alone would leave it. */
  @Nullable Double settledMillis(Supply after, double shareOfPeak) {
    double level = shareOfPeak * recording.peakVolts();
    return NOISE_FACTOR * after.usualSpreadVolts() > level ? null : steadyMillis(after, level);
  }

  private @Nullable Double steadyMillis(Supply after, double level) {
    int from = (int) Math.ceil(recording.time().indexAt(returnSeconds));
    int first = Math.max(0, from);
    double[] deviations = after.deviationsIn(recording, first, after.to());
    int last = after.to() - 1;
    while (last >= first && isWithin(after, last, deviations[last - first], level)) {
      last--;
    }
    if (last >= after.to() - recording.samplesPerCycle()) {
      return null;
    }
    double seconds = last < first ? returnSeconds : recording.time().secondsAt(last + 0.5);
    return (seconds - lossSeconds) * 1e3;
  }

  private boolean isWithin(Supply after, int index, double deviation, double level) {
    return Math.abs(deviation) <= level
        || (after.isVagueInPlaces() && isOnStep(after, index, level));
  }

  /** Whether a sample lies on the way of a step of the supply's own, known to a few samples. */
  private boolean isOnStep(Supply after, int index, double level) {
    int reach = recording.samplesIn(OWN_STEP_SECONDS);
    double lowest = Double.POSITIVE_INFINITY;
    double highest = Double.NEGATIVE_INFINITY;
    for (int i = index - reach; i <= index + reach; i++) {
      double volts = after.model().voltsAt(recording.time().secondsAt(i));
      lowest = Math.min(lowest, volts);
      highest = Math.max(highest, volts);
    }
    double volts = recording.volts()[index];
    return volts >= lowest - level && volts <= highest + level;
  }

  /**
   * Loss to the start of the first cycle from which Urms(1/2) (IEC 61000-4-30: one cycle, refreshed
   * each half cycle) stays within 10 % of nominal up to the end of the supply's fit, or of the
   * record where it comes later; null where it never leaves, and where it never stays.
   */
  @Nullable Double recoveryMillis(Supply after) {
    double half = recording.time().sampleRateHertz() / after.model().frequencyHertz() / 2;
    double degrees = after.model().angleDegreesAt(lossSeconds);
    double start = recording.time().indexAt(lossSeconds) - (degrees % 180) / 180 * half;
    int first = firstRecovered(start, after.to(), half);
    if (first < 0) {
      first = firstRecovered(start, recording.length(), half);
    }
    return first <= 0
        ? null
        : (Double) ((recording.time().secondsAt(start + first * half) - lossSeconds) * 1e3);
  }

  /** The first half cycle of those that stay; 0 where none leaves, -1 where none stays. */
  private int firstRecovered(double start, int end, double half) {
    double[] rms = CycleRms.refreshedEachHalfCycle(recording.volts(), start, end, 2 * half);
    double nominal = recording.task().nominalVolts();
    double within = RECOVERED_SHARE_OF_NOMINAL * nominal;
    int first = rms.length;
    while (first > 0 && Math.abs(rms[first - 1] - nominal) <= within) {
      first--;
    }
    return first == rms.length ? -1 : first;
  }
}
