package mainsgap.transfer.instant;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import mainsgap.transfer.edge.Edge;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Residue;
import mainsgap.transfer.supply.Segmentation;
import mainsgap.transfer.supply.Supply;

/**
 * Tells the bounces of the contact that brings the supply after from the transient that the supply
 * itself makes: the shape of the arrival is fitted without the samples that lie at the residue, and
 * what then still lies at the residue, where the shape does not, is a break.
 */
public final class Makes {
  /** The shape of the arrival is not better known than this share of nominal peak. */
  private static final double SPREAD_FLOOR_SHARE_OF_PEAK = 0.006;

  /** Where the make is known to a sample, the shape is known better. */
  private static final double PINNED_FLOOR_SHARE_OF_PEAK = 0.004;

  private static final double CROSSING_SHARE_OF_PEAK = 0.15;

  /** Nor better than the noise, of whose spread a few samples give one that is a little larger. */
  private static final double SPREAD_NOISES = 1.2;

  /** Nearer to the residue than to the shape, and surely so where only the shape tells a break. */
  private static final double NEARER_SHARE = 1;

  private static final double SURELY_SHARE = 0.5;

  /** Less sure than this, a load that nowhere lies still at its residue may be a ring about it. */
  private static final double LIKELY_SHARE = 0.35;

  /** A dead load lies within so many spreads of its residue. */
  private static final double AT_RESIDUE_SPREADS = 2;

  /** Where shape and residue are nearer to each other than this, no break is told. */
  private static final double APART_SPREADS = 2;

  /** A break shorter than this is not told from a spike. */
  private static final double SHORTEST_BREAK_SECONDS = 30e-6;

  /** A dead load lies further off the shape of the arrival than that shape is wrong. */
  private static final double OFF_SHARE_OF_PEAK = 0.02;

  /** So many standard deviations of the noise show that a voltage is on its way. */
  private static final double PASSING_DEVIATIONS = 4;

  /** Shape and residue are no farther apart where the one crosses the other. */
  private static final double PASSING_SHARE_OF_PEAK = 0.04;

  private final Recording recording;
  private final Residue residue;
  private final Supply after;
  private final double noiseVolts;
  private final Edge first;
  private final List<Segmentation.Run> breaks;

  private Makes(
      Recording recording,
      Residue residue,
      Supply after,
      double noiseVolts,
      Edge first,
      List<Segmentation.Run> breaks) {
    this.recording = recording;
    this.residue = residue;
    this.after = after;
    this.noiseVolts = noiseVolts;
    this.first = first;
    this.breaks = breaks;
  }

  /**
   * Finds the makes in a search window that begins in the residue.
   *
   * @param noiseVolts the standard deviation of one sample's noise
   */
  static Makes find(
      Recording recording,
      Residue residue,
      Supply after,
      double noiseVolts,
      Instants instants,
      Instants.Search search,
      List<Segmentation.Run> runs) {
    boolean pinned = search.first() == search.last();
    double floor = pinned ? PINNED_FLOOR_SHARE_OF_PEAK : SPREAD_FLOOR_SHARE_OF_PEAK;
    double spread = Math.max(floor * recording.peakVolts(), SPREAD_NOISES * noiseVolts);
    Edge arrival =
        pinned
            ? instants.arriving(search, i -> isNearCrossing(recording, residue, after, i))
            : instants.arriving(search);
    Makes made = new Makes(recording, residue, after, noiseVolts, arrival, List.of());
    List<Segmentation.Run> breaks = made.breaks(search, spread, runs);
    return new Makes(recording, residue, after, noiseVolts, arrival, breaks);
  }

  /** Where a dead load looks much like a fed one, so that a break there must not bend the shape. */
  private static boolean isNearCrossing(
      Recording recording, Residue residue, Supply after, int index) {
    double seconds = recording.time().secondsAt(index);
    double apart = after.model().voltsAt(seconds) - residue.voltsAt(seconds);
    return Math.abs(apart) < CROSSING_SHARE_OF_PEAK * recording.peakVolts();
  }

  /** The first make, with the shape of the arrival. */
  Edge first() {
    return first;
  }

  /** The breaks that follow, in the order of time. */
  List<Segmentation.Run> breaks() {
    return breaks;
  }

  private double fromResidue(int index) {
    return recording.volts()[index] - residue.voltsAt(recording.time().secondsAt(index));
  }

  /** Breaks from the settled supply, and from the shape of the arrival, in the order of time. */
  private List<Segmentation.Run> breaks(
      Instants.Search search, double spread, List<Segmentation.Run> runs) {
    List<Segmentation.Run> found = new ArrayList<>(breaksIn(search, spread));
    int made = (int) Math.ceil(recording.time().indexAt(first.seconds()));
    int shortest = recording.samplesIn(SHORTEST_BREAK_SECONDS);
    for (Segmentation.Run run : runs) {
      if (run.part() != Segmentation.Part.BREAK || run.to() - made < shortest) {
        continue;
      }
      Segmentation.Run later =
          new Segmentation.Run(run.part(), Math.max(made, run.from()), run.to());
      if (found.stream().noneMatch(later::overlaps) && isBreak(later, spread, NEARER_SHARE)) {
        found.add(later);
      }
    }
    found.sort(Comparator.comparingInt(Segmentation.Run::from));
    return found;
  }

  private List<Segmentation.Run> breaksIn(Instants.Search search, double spread) {
    int from = (int) Math.ceil(recording.time().indexAt(first.seconds()));
    int to = search.to();
    while (to > from && !first.covers(recording.time().secondsAt(to - 1))) {
      to--;
    }
    if (to - from < 2) {
      return List.of();
    }
    double[] gap = new double[to - from];
    double[] fed = new double[to - from];
    for (int i = from; i < to; i++) {
      double dead = fromResidue(i) / spread;
      double deviation = fromArrival(i) / Math.max(spread, spreadAt(i));
      gap[i - from] = dead * dead;
      fed[i - from] = deviation * deviation;
    }
    int shortest = recording.samplesIn(SHORTEST_BREAK_SECONDS);
    List<Segmentation.Run> found = new ArrayList<>();
    int fedSince = from;
    for (Segmentation.Run run : Segmentation.cheapestAfterReturn(from, gap, fed)) {
      if (run.part() == Segmentation.Part.AFTER) {
        fedSince = run.from();
      } else if (run.length() >= shortest
          && run.from() - fedSince >= shortest
          && isBreak(run, spread, SURELY_SHARE)) {
        found.add(run);
      }
    }
    return found;
  }

  /**
   * Dead at its end, at least, while the supply would not be all along: the supply's own rests and
   * crossings are no breaks.
   *
   * @param share dead means off the residue by less than this share of how far it is off the shape
   */
  private boolean isBreak(Segmentation.Run run, double spread, double share) {
    int end = run.to() - (run.length() + 2) / 3;
    double dead = 0;
    double fed = 0;
    double all = 0;
    double apart = 0;
    for (int i = run.from(); i < run.to(); i++) {
      double seconds = recording.time().secondsAt(i);
      apart += Math.abs(arrivedAt(seconds) - residue.voltsAt(seconds));
      dead += i < end ? 0 : Math.abs(fromResidue(i));
      fed += i < end ? 0 : Math.abs(fromArrival(i));
      all += Math.abs(fromArrival(i));
    }
    double off = OFF_SHARE_OF_PEAK * recording.peakVolts() * run.length();
    boolean isNear = apart < PASSING_SHARE_OF_PEAK * recording.peakVolts() * run.length();
    boolean isSurelyDead = dead < LIKELY_SHARE * fed || liesStillSomewhere(run);
    return all > off
        && dead < share * fed
        && apart > APART_SPREADS * spread * run.length()
        && (isSurelyDead || !hasSwungBack(run))
        && !((isNear || !isSurelyDead) && isPassing(run));
  }

  /**
   * Whether the voltage moves as the settled supply does, only beside it, and beyond doubt not as a
   * dead load: where a supply that wanders crosses the residue it is nearer to that than to its
   * fit.
   */
  private boolean isPassing(Segmentation.Run run) {
    if (after.hasSteps()) {
      return false;
    }
    double[] beside = after.deviationsIn(recording, run.from(), run.to());
    double[] away = new double[run.length()];
    for (int k = 0; k < away.length; k++) {
      away[k] = fromResidue(run.from() + k);
    }
    double doubt = PASSING_DEVIATIONS * PASSING_DEVIATIONS * noiseVolts * noiseVolts;
    return squaresAboutMean(away) - squaresAboutMean(beside) > doubt;
  }

  private static double squaresAboutMean(double[] values) {
    double sum = 0;
    double squares = 0;
    for (double value : values) {
      sum += value;
      squares += value * value;
    }
    return squares - sum * sum / values.length;
  }

  /** At the residue, and still there, in some third of it. */
  private boolean liesStillSomewhere(Segmentation.Run run) {
    int third = Math.max(1, run.length() / 3);
    for (int from = run.from(); from + third <= run.to(); from += third) {
      if (liesStill(from, from + third)) {
        return true;
      }
    }
    return false;
  }

  /** At the residue, and as near to it in the one half as in the other. */
  private boolean liesStill(int from, int to) {
    double within = AT_RESIDUE_SPREADS * Math.max(residue.spreadVolts(), noiseVolts);
    int half = Math.max(1, (to - from) / 2);
    double away = 0;
    double moved = 0;
    for (int i = from; i < to; i++) {
      away += Math.abs(fromResidue(i)) / (to - from);
      moved -= i < from + half ? fromResidue(i) / half : 0;
      moved += i >= to - half ? fromResidue(i) / half : 0;
    }
    return away <= within && Math.abs(moved) <= within;
  }

  /** As far to the other side of the shape before. */
  private boolean hasSwungBack(Segmentation.Run run) {
    double mean = 0;
    for (int i = run.from(); i < run.to(); i++) {
      mean += fromArrival(i) / run.length();
    }
    for (int i = (int) Math.ceil(recording.time().indexAt(first.seconds())); i < run.from(); i++) {
      if (fromArrival(i) * Math.signum(mean) < -Math.abs(mean)) {
        return true;
      }
    }
    return false;
  }

  private double fromArrival(int index) {
    return recording.volts()[index] - arrivedAt(recording.time().secondsAt(index));
  }

  /** By the shape of the arrival, and where that is over by the settled supply. */
  private double arrivedAt(double seconds) {
    return first.covers(seconds) ? first.laterVoltsAt(seconds) : after.model().voltsAt(seconds);
  }

  private double spreadAt(int index) {
    return after.model().spreadVoltsAt(recording.time().secondsAt(index));
  }
}
