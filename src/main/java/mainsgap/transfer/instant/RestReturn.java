package mainsgap.transfer.instant;

import mainsgap.transfer.edge.Edge;
import mainsgap.transfer.edge.Moments;
import mainsgap.transfer.supply.OwnSteps;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Residue;
import mainsgap.transfer.supply.Segmentation;
import mainsgap.transfer.supply.Supply;
import org.jspecify.annotations.Nullable;

/**
 * Locates the return of an output whose cycle has steps, and may rest: the load was dead up to it,
 * and follows the settled cycle from it on. Each sample speaks for one or the other where the two
 * lie apart; while the output rests at what was left on the load, none does, and the return may lie
 * anywhere in that rest. A step at a rest's end cannot be told from the output's own: it bounds the
 * rest.
 */
final class RestReturn {
  /** Supply and residue are told apart where they lie this share of nominal peak apart. */
  private static final double TOLD_APART_SHARE_OF_PEAK = 0.05;

  /** A supply that settles, and a residue, are known to this share of nominal peak. */
  private static final double SPREAD_SHARE_OF_PEAK = 0.02;

  /** No sample tells more than this (-2 ln p): a stray, or a supply that still settles. */
  private static final double MOST_COST = 25;

  /** A supply that starts softly gives at least so much of what it will, one that rings at most. */
  private static final double LEAST_STARTED = 0.4;

  private static final double MOST_STARTED = 1.6;

  /** What is fed for so long, and so many samples, is fed beyond doubt. */
  private static final double SURE_SECONDS = 30e-6;

  private static final int SURE_SAMPLES = 2;

  /** An instant that is found elsewhere is the same one if it lies within so many samples. */
  private static final double SAME_SAMPLES = 2;

  /** Or within so many standard deviations. */
  private static final double SAME_SPREADS = 3;

  private final Recording recording;
  private final Residue residue;
  private final Supply after;
  private final OwnSteps ownSteps;

  RestReturn(Recording recording, Residue residue, Supply after) {
    this.recording = recording;
    this.residue = residue;
    this.after = after;
    this.ownSteps = new OwnSteps(recording, after);
  }

  /**
   * The return within a rest, or elsewhere than it was found; null where it lies where it was
   * found, and where the output only passes what was left: there the samples that lie near it,
   * which count for nothing here, tell more.
   *
   * @param fromSeconds the load is not fed before
   */
  @Nullable Edge bounded(double fromSeconds, Edge found) {
    int from = Math.max(0, (int) Math.ceil(recording.time().indexAt(fromSeconds)));
    int to = Math.min(recording.length(), after.from() + (int) recording.samplesPerCycle());
    if (to - from < 2) {
      return null;
    }
    Moments firstFed = Moments.byCosts(costs(from, to));
    double interval = recording.time().intervalSeconds();
    double seconds = recording.time().secondsAt(from + firstFed.mean() - 0.5);
    boolean isSharp = firstFed.spread() < SAME_SAMPLES;
    double spread = firstFed.spread() * interval;
    double off = Math.abs(seconds - found.seconds());
    boolean isWhereFound =
        isSharp
            ? off <= SAME_SAMPLES * interval
            : off < SAME_SPREADS * spread && isPassed(found, spread);
    if (isWhereFound) {
      return null;
    }
    return new Edge(
        seconds,
        interval / Math.sqrt(12),
        isSharp ? spread : 0,
        isSharp ? 0 : spread,
        found.shape(),
        found.window(),
        found.laterVolts());
  }

  /**
   * Whether the output does not rest about an instant: it only passes what was left.
   *
   * @param spreadSeconds how well the instant is told: as a rest leaves it open, or better
   */
  private boolean isPassed(Edge found, double spreadSeconds) {
    if (spreadSeconds >= RestLoss.SHORTEST_REST_SECONDS / Math.sqrt(12)) {
      return false;
    }
    int at = (int) Math.round(recording.time().indexAt(found.seconds()));
    int longest = recording.samplesIn(RestLoss.SHORTEST_REST_SECONDS);
    int from = at;
    while (at - from < longest && isAlike(from - 1)) {
      from--;
    }
    int to = at;
    while (to - from < longest && isAlike(to)) {
      to++;
    }
    return to - from < longest;
  }

  private boolean isAlike(int index) {
    double seconds = recording.time().secondsAt(index);
    double apart = ownSteps.at(seconds).distanceVolts(residue.voltsAt(seconds));
    return apart < TOLD_APART_SHARE_OF_PEAK * recording.peakVolts();
  }

  /**
   * The first sample that the output surely feeds, up to a known return: where a contact bounces,
   * the first make. That of the return itself where no earlier one is. What feeds the load before
   * it is dead for longer than a contact bounces is the supply before.
   *
   * @param fromSeconds the load is not fed before
   * @param returnSeconds from when on it is fed for good
   */
  int firstFed(double fromSeconds, double returnSeconds) {
    int from = Math.max(0, (int) Math.ceil(recording.time().indexAt(fromSeconds)));
    int to = (int) Math.ceil(recording.time().indexAt(returnSeconds));
    double surelyFed = MOST_COST * Math.max(SURE_SAMPLES, recording.samplesIn(SURE_SECONDS));
    double surelyDead =
        MOST_COST * Math.max(SURE_SAMPLES, recording.samplesIn(RisingReturn.BOUNCE_SECONDS));
    double fed = 0;
    double dead = 0;
    int since = from;
    int first = to;
    for (int i = from; i < to; i++) {
      double evidence = deadMinusFed(i);
      dead = Math.min(surelyDead, Math.max(0, dead - evidence));
      fed = Math.min(surelyFed, Math.max(0, fed + evidence));
      if (fed == 0) {
        since = i + 1;
      }
      if (dead == surelyDead) {
        first = to;
      } else if (fed == surelyFed) {
        first = Math.min(first, since);
      }
    }
    return first;
  }

  /**
   * Whether the load is dead in a run beyond doubt: the output's own steps and rests are no break.
   */
  boolean isBreak(Segmentation.Run run) {
    double sum = 0;
    for (int i = run.from(); i < run.to(); i++) {
      sum += deadMinusFed(i);
    }
    return sum <= -MOST_COST;
  }

  /** Up to a constant, of each sample from the first to the one after the last as the first fed. */
  private double[] costs(int from, int to) {
    double[] costs = new double[to - from + 1];
    for (int i = from; i < to; i++) {
      costs[i - from + 1] = costs[i - from] + deadMinusFed(i);
    }
    return costs;
  }

  private double deadMinusFed(int index) {
    double seconds = recording.time().secondsAt(index);
    OwnSteps.Supplied supplied = ownSteps.at(seconds);
    double left = residue.voltsAt(seconds);
    double apart = TOLD_APART_SHARE_OF_PEAK * recording.peakVolts();
    double volts = recording.volts()[index];
    boolean isAlike =
        supplied.distanceVolts(left) < apart
            && (supplied.distanceVolts(volts) < apart) == (Math.abs(volts - left) < apart);
    if (isAlike) {
      return 0;
    }
    double spread =
        Math.hypot(SPREAD_SHARE_OF_PEAK * recording.peakVolts(), supplied.spreadVolts());
    double fed = started(supplied, left).distanceVolts(volts);
    return cost((volts - left) / spread) - cost(fed / spread);
  }

  /** What a supply may give that starts softly or rings: off what was left, it feeds the load. */
  private static OwnSteps.Supplied started(OwnSteps.Supplied supplied, double left) {
    double low = supplied.lowVolts() - left;
    double high = supplied.highVolts() - left;
    return new OwnSteps.Supplied(
        left + low * (low > 0 ? LEAST_STARTED : MOST_STARTED),
        left + high * (high > 0 ? MOST_STARTED : LEAST_STARTED),
        supplied.spreadVolts());
  }

  private static double cost(double deviation) {
    return Math.min(MOST_COST, deviation * deviation);
  }
}
