package mainsgap.transfer.supply;

import java.util.ArrayList;
import java.util.List;
import mainsgap.signal.PeriodicModel;
import org.apache.commons.math3.stat.StatUtils;
import org.jspecify.annotations.Nullable;

/**
 * Follows one supply along a record, its phase cycle by cycle, and tells where it breaks: where the
 * voltage is for a while away from what the supply does, and less than half of it. Averages are
 * looked at, so that neither spikes nor noise count.
 */
public final class SupplyBreaks {
  private static final double AWAY_SHARE_OF_PEAK = 0.1;
  private static final double NOISE_FACTOR = 5;

  /** A dead load crosses the supply in this time. */
  private static final double CROSSING_SECONDS = 1.2e-3;

  /** A load that lies still is nearer to zero, with its hum. */
  private static final double CROSSED_SHARE_OF_PEAK = 0.04;

  private static final double SHORTEST_SECONDS = 1e-3;

  /** Fewer averages do not tell how a voltage moves. */
  private static final int FEWEST_AVERAGES = 4;

  /** The squares by which a voltage moves are so many times what the supply leaves of them. */
  private static final double MOVED_SQUARES = 4;

  private static final double DEAD_SHARE = 0.6;

  /** Dead is less than this share of what the supply would be. */
  private static final double LOW_SHARE = 0.5;

  /** A load that stays this high for so long is fed: a sine is low for less. */
  private static final double FED_SECONDS = 2.5e-3;

  /** Fed means that the supply was followed for this part of a cycle without being left. */
  private static final double FED_CYCLES = 0.3;

  /** What is away for longer is not coming back, or as another supply. */
  private static final double LEFT_CYCLES = 1.5;

  /** Voltages of the supply are worked out for so many averages at once. */
  private static final int AHEAD = 512;

  private final Recording recording;
  private final Supply supply;
  private final int width;
  private final double offsetVolts;
  private final double awayVolts;
  private final double crossedVolts;

  /** How much later than in its fit the supply is where it was last followed. */
  private double laterSeconds;

  /**
   * A break, in samples.
   *
   * @param from the first that was seen away
   * @param to one after the last
   * @param unseen so many about it lie where the supply is as low as a dead load
   */
  public record Break(int from, int to, int unseen) {}

  /**
   * What came of following the supply.
   *
   * @param breaks after each of which it fed again
   * @param leftAt from where on it was not followed again; -1 where it was, up to the end
   */
  public record Followed(List<Break> breaks, int leftAt) {}

  public SupplyBreaks(Recording recording, Supply supply) {
    this.recording = recording;
    this.supply = supply;
    this.width = Departure.averagingSamples(recording);
    this.offsetVolts = supply.harmonics().offsetVolts();
    double noise = NOISE_FACTOR * supply.usualSpreadVolts() / Math.sqrt(width);
    this.awayVolts = Math.max(AWAY_SHARE_OF_PEAK * recording.peakVolts(), noise);
    this.crossedVolts = Math.max(CROSSED_SHARE_OF_PEAK * recording.peakVolts(), noise);
  }

  /**
   * Follows the supply to the end of the record.
   *
   * @param first the sample from which it feeds the load, or comes up to it
   * @param counted the first sample at which a break counts
   */
  public Followed from(int first, int counted) {
    int gone = (int) (LEFT_CYCLES * recording.samplesPerCycle());
    return from(first, counted, recording.length(), gone);
  }

  /**
   * The same up to sample {@code end}, however long a break is.
   *
   * @param first the sample from which it feeds the load
   */
  public Followed upTo(int end, int first) {
    return from(first, first, end, end);
  }

  private Followed from(int first, int counted, int end, int gone) {
    int fedSamples = (int) (FED_CYCLES * recording.samplesPerCycle());
    int crossing = recording.samplesIn(CROSSING_SECONDS);
    List<Break> breaks = new ArrayList<>();
    int followedSince = first;
    int awayFrom = -1;
    int awayTo = -1;
    boolean fed = false;
    laterSeconds = 0;
    PeriodicModel.Row row = supply.model().every(width * recording.time().intervalSeconds());
    FollowedPhase phase = new FollowedPhase(supply);
    double[] ahead = new double[AHEAD];
    int filled = 0;
    for (int i = first, k = AHEAD; i + width <= end; i += width, k++) {
      if (k >= filled) {
        filled = AHEAD;
        k = 0;
        row.fill(ahead, AHEAD, middleSeconds(i) - laterSeconds);
      }
      boolean isAway = isAway(i, ahead[k]);
      if (phase.add(middleSeconds(i) - laterSeconds, averageVolts(i), isAway)) {
        laterSeconds += phase.laterSeconds();
        filled = 0;
      }
      if (isAway) {
        followedSince = i + width;
        awayFrom = awayFrom < 0 ? i : awayFrom;
        awayTo = i + width;
      } else if (awayFrom >= 0 && i - awayTo >= crossing) {
        int deadTo = lastDead(awayFrom, awayTo);
        if (fed && awayFrom >= counted && isBreak(awayFrom, deadTo)) {
          breaks.add(seen(awayFrom, deadTo, this));
        }
        awayFrom = -1;
      }
      fed |= i + width - followedSince >= fedSamples;
      if (fed && awayFrom >= counted && i - awayFrom > gone) {
        return new Followed(breaks, awayFrom);
      }
    }
    return new Followed(breaks, fed && awayFrom >= counted ? awayFrom : -1);
  }

  /**
   * The break between where this supply was left for good and where another one feeds; null where
   * the load was fed all along, by a supply that drifts.
   *
   * @param next null where none feeds up to the end of the record
   */
  public @Nullable Break between(int left, @Nullable SupplyBreaks next) {
    int followed = next == null ? recording.length() : next.followedFrom(left);
    int to = isBreak(left, followed) ? lastDead(left, followed) : deadTo(left);
    return isBreak(left, to) ? seen(left, to, next) : null;
  }

  /** From where on the voltage follows the supply up to its fit. */
  public int followedFrom(int earliest) {
    int i = supply.from();
    while (i - width >= earliest && !isAway(i - width, expectedVolts(i - width))) {
      i -= width;
    }
    return i;
  }

  /** One after the last dead average: a supply at another phase stays away when it feeds. */
  private int lastDead(int from, int to) {
    int last = to - (to - from) % width - width;
    while (last > from && !(isDead(last) && isAway(last, expectedVolts(last)))) {
      last -= width;
    }
    return last + width;
  }

  /** One after the last average of a load that is dead from a sample on. */
  private int deadTo(int from) {
    int fed = recording.samplesIn(FED_SECONDS);
    int to = from;
    for (int i = from; i + width <= recording.length() && i - to <= fed; i += width) {
      to = isDead(i) ? i + width : to;
    }
    return to;
  }

  private Break seen(int from, int to, @Nullable SupplyBreaks next) {
    int unseen = unseenSamples(from - width, -width);
    return new Break(from, to, unseen + (next == null ? 0 : next.unseenSamples(to, width)));
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

  /**
   * Long enough, dead for most of the time at which the voltage is away from the supply, and no
   * crossing of one that has drifted away.
   */
  private boolean isBreak(int from, int to) {
    int dead = 0;
    int away = 0;
    for (int i = from; i + width <= to; i += width) {
      if (isAway(i, expectedVolts(i))) {
        away++;
        dead += isDead(i) ? 1 : 0;
      }
    }
    return to - from >= recording.samplesIn(SHORTEST_SECONDS)
        && dead > DEAD_SHARE * away
        && !crossesZero(from, to)
        && !movesBeside(from, to);
  }

  /**
   * Whether the voltage goes from one side of zero to the other: what is left on a load that
   * nothing feeds lies still, but for the first and the last average, which may reach into what
   * feeds it before and after.
   */
  private boolean crossesZero(int from, int to) {
    int last = from + ((to - from) / width - 2) * width;
    double begins = averageVolts(from + width) - offsetVolts;
    double ends = averageVolts(Math.max(from + width, last)) - offsetVolts;
    boolean isShort = to - from < recording.samplesIn(FED_SECONDS);
    return isShort
        && begins * ends < 0
        && Math.min(Math.abs(begins), Math.abs(ends)) > crossedVolts;
  }

  /**
   * Whether the voltage moves as the supply does, and only lies beside it: one that drifts faster
   * than it is followed is away from its fit at its crossings. The first and the last average are
   * left out, as above.
   */
  private boolean movesBeside(int from, int to) {
    int count = (to - from) / width - 2;
    if (count < FEWEST_AVERAGES) {
      return false;
    }
    double[] volts = new double[count];
    double[] beside = new double[count];
    for (int k = 0; k < count; k++) {
      volts[k] = averageVolts(from + (k + 1) * width);
      beside[k] = volts[k] - expectedVolts(from + (k + 1) * width);
    }
    return StatUtils.variance(volts) > MOVED_SQUARES * StatUtils.variance(beside);
  }

  private boolean isAway(int from, double expected) {
    return Math.abs(averageVolts(from) - expected) > Math.max(awayVolts, spreadVolts(from));
  }

  private boolean isDead(int from) {
    double expected = Math.abs(expectedVolts(from) - offsetVolts);
    double level = Math.max(LOW_SHARE * expected, AWAY_SHARE_OF_PEAK * recording.peakVolts());
    return Math.abs(averageVolts(from) - offsetVolts) < level;
  }

  private double expectedVolts(int from) {
    return supply.model().voltsAt(middleSeconds(from) - laterSeconds);
  }

  private double middleSeconds(int from) {
    return recording.time().secondsAt(from + (width - 1) / 2.0);
  }

  private double spreadVolts(int from) {
    return supply.isVagueInPlaces()
        ? 3 * supply.model().spreadVoltsAt(middleSeconds(from) - laterSeconds)
        : 0;
  }

  private double averageVolts(int from) {
    double sum = 0;
    for (int i = from; i < from + width; i++) {
      sum += recording.volts()[i];
    }
    return sum / width;
  }
}
