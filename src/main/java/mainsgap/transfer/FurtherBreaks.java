package mainsgap.transfer;

import mainsgap.signal.HarmonicModel;
import mainsgap.signal.PeriodicModel;

/**
 * Finds how often a supply that has come back, and fed the load for a cycle, breaks again up to the
 * end of the record: for a while the voltage is away from what the supply does, and less than half
 * of it. Averages are looked at, so that neither spikes nor noise count.
 */
final class FurtherBreaks {
  private static final double AVERAGED_SECONDS = 0.1e-3;
  private static final double AWAY_SHARE_OF_PEAK = 0.1;
  private static final double NOISE_FACTOR = 5;

  /** A dead load crosses the supply in this time. */
  private static final double CROSSING_SECONDS = 1.2e-3;

  private static final double SHORTEST_SECONDS = 1e-3;
  private static final double DEAD_SHARE = 0.6;

  /** Fed means that the supply was followed for this part of a cycle without being left. */
  private static final double FED_CYCLES = 0.3;

  /** What is expected is worked out for so many averages at once. */
  private static final int AHEAD = 512;

  private final Recording recording;
  private final Supply supply;
  private final int width;
  private final double offsetVolts;
  private final double awayVolts;

  FurtherBreaks(Recording recording, Supply supply) {
    HarmonicModel harmonics = supply.harmonics();
    this.recording = recording;
    this.supply = supply;
    this.width = recording.samplesIn(AVERAGED_SECONDS);
    this.offsetVolts = harmonics.offsetVolts();
    double noise = NOISE_FACTOR * supply.usualSpreadVolts() / Math.sqrt(width);
    this.awayVolts = Math.max(AWAY_SHARE_OF_PEAK * recording.peakVolts(), noise);
  }

  /**
   * The breaks that begin after a time.
   *
   * @param returnSeconds from when on the supply feeds the load, or comes up to it
   */
  FurtherInterruptions from(double seconds, double returnSeconds) {
    int counted = (int) Math.ceil(recording.time().indexAt(seconds));
    int first = Math.max(0, (int) Math.ceil(recording.time().indexAt(returnSeconds)));
    int fedSamples = (int) (FED_CYCLES * recording.samplesPerCycle());
    int crossing = recording.samplesIn(CROSSING_SECONDS);
    FurtherInterruptions found = FurtherInterruptions.NONE;
    int followedSince = first;
    int awayFrom = -1;
    int awayTo = -1;
    int dead = 0;
    int away = 0;
    boolean fed = false;
    PeriodicModel.Row row = supply.model().every(width * recording.time().intervalSeconds());
    double[] ahead = new double[AHEAD];
    for (int i = first, k = 0; i + width <= recording.length(); i += width, k++) {
      if (k % AHEAD == 0) {
        row.fill(ahead, AHEAD, middleSeconds(i));
      }
      double expected = ahead[k % AHEAD];
      double average = averageVolts(i);
      boolean isAway = Math.abs(average - expected) > Math.max(awayVolts, spreadVolts(i));
      if (isAway) {
        followedSince = i + width;
        if (awayFrom < 0) {
          awayFrom = i;
          dead = 0;
          away = 0;
        }
        awayTo = i + width;
        away++;
        dead += Math.abs(average - offsetVolts) < 0.5 * Math.abs(expected - offsetVolts) ? 1 : 0;
      } else if (awayFrom >= 0 && i - awayTo >= crossing) {
        boolean counts = fed && awayFrom >= counted && isBreak(awayTo - awayFrom, dead, away);
        found = counts ? with(found, awayFrom, awayTo) : found;
        awayFrom = -1;
      }
      fed |= i + width - followedSince >= fedSamples;
    }
    return awayFrom >= counted && fed && isBreak(awayTo - awayFrom, dead, away)
        ? with(found, awayFrom, awayTo)
        : found;
  }

  /** Adds a break, which began and ended somewhere between where it was seen and where not. */
  private FurtherInterruptions with(FurtherInterruptions found, int from, int to) {
    int unseen = unseenSamples(from - width, -width) + unseenSamples(to, width);
    double toMillis = 1e3 * recording.time().intervalSeconds();
    double millis = (to - from + unseen / 2.0) * toMillis;
    double uncertaintyMillis = (unseen / 2.0 + width) * toMillis;
    Double longest = found.longestMillis();
    boolean isLonger = longest == null || millis > longest;
    return new FurtherInterruptions(
        found.count() + 1,
        isLonger ? (Double) millis : longest,
        isLonger ? uncertaintyMillis : found.uncertaintyMillis());
  }

  /**
   * Where the supply is as low as a dead load, a break is not seen: for so long from a place on.
   */
  private int unseenSamples(int start, int step) {
    int at = start;
    while (at >= 0
        && at + width <= recording.length()
        && Math.abs(expectedVolts(at) - offsetVolts) < Math.max(awayVolts, spreadVolts(at))) {
      at += step;
    }
    return Math.abs(at - start);
  }

  private boolean isBreak(int samples, int dead, int away) {
    return samples >= recording.samplesIn(SHORTEST_SECONDS) && dead > DEAD_SHARE * away;
  }

  private double expectedVolts(int from) {
    return supply.model().voltsAt(middleSeconds(from));
  }

  private double middleSeconds(int from) {
    return recording.time().secondsAt(from + (width - 1) / 2.0);
  }

  private double spreadVolts(int from) {
    return supply.hasSteps() ? 3 * supply.model().spreadVoltsAt(middleSeconds(from)) : 0;
  }

  private double averageVolts(int from) {
    double sum = 0;
    for (int i = from; i < from + width; i++) {
      sum += recording.volts()[i];
    }
    return sum / width;
  }
}
