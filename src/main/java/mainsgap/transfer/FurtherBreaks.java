package mainsgap.transfer;

import mainsgap.signal.HarmonicModel;

/**
 * Counts how often a supply that has come back, and fed the load for a cycle, breaks again up to
 * the end of the record: for a while the voltage is away from what the supply does, and less than
 * half of it. Averages are looked at, so that neither spikes nor noise count.
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

  /** The breaks that begin after a time. */
  int countFrom(double seconds) {
    int first = Math.max(0, (int) Math.ceil(recording.time().indexAt(seconds)));
    int fedSamples = (int) (FED_CYCLES * recording.samplesPerCycle());
    int crossing = recording.samplesIn(CROSSING_SECONDS);
    int count = 0;
    int followedSince = first;
    int awayFrom = -1;
    int awayTo = -1;
    int dead = 0;
    int away = 0;
    boolean fed = false;
    for (int i = first; i + width <= recording.length(); i += width) {
      double expected = expectedVolts(i);
      double found = averageVolts(i);
      boolean isAway = Math.abs(found - expected) > Math.max(awayVolts, spreadVolts(i));
      if (isAway) {
        followedSince = i + width;
        if (awayFrom < 0) {
          awayFrom = i;
          dead = 0;
          away = 0;
        }
        awayTo = i + width;
        away++;
        dead += Math.abs(found - offsetVolts) < 0.5 * Math.abs(expected - offsetVolts) ? 1 : 0;
      } else if (awayFrom >= 0 && i - awayTo >= crossing) {
        count += fed && isBreak(awayTo - awayFrom, dead, away) ? 1 : 0;
        awayFrom = -1;
      }
      fed |= i + width - followedSince >= fedSamples;
    }
    return count + (awayFrom >= 0 && fed && isBreak(awayTo - awayFrom, dead, away) ? 1 : 0);
  }

  private boolean isBreak(int samples, int dead, int away) {
    return samples >= recording.samplesIn(SHORTEST_SECONDS) && dead > DEAD_SHARE * away;
  }

  private double expectedVolts(int from) {
    return supply.model().voltsAt(recording.time().secondsAt(from + (width - 1) / 2.0));
  }

  private double spreadVolts(int from) {
    double seconds = recording.time().secondsAt(from + (width - 1) / 2.0);
    return supply.hasSteps() ? 3 * supply.model().spreadVoltsAt(seconds) : 0;
  }

  private double averageVolts(int from) {
    double sum = 0;
    for (int i = from; i < from + width; i++) {
      sum += recording.volts()[i];
    }
    return sum / width;
  }
}
