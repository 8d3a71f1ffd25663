package mainsgap.transfer.instant;

import mainsgap.transfer.edge.Edge;
import mainsgap.transfer.edge.EdgeShape;
import mainsgap.transfer.edge.Moments;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Residue;
import mainsgap.transfer.supply.Supply;
import org.jspecify.annotations.Nullable;

/**
 * Finds where a contact opened that went on conducting through an arc: 10 to 20 V are lost against
 * the current, whichever way it flows, until the next current zero ends the arc. The opening is the
 * loss, since there the load's voltage leaves the supply. Figures of arcs from common practice.
 */
final class ArcStart {
  /** The arc of a mains contact burns to the next current zero, half a cycle at most. */
  private static final double LONGEST_CYCLES = 0.55;

  private static final double SHORTEST_SECONDS = 0.1e-3;
  private static final double SMALLEST_VOLTS = 6;
  private static final double LARGEST_VOLTS = 40;

  /** By how much squared deviations, in units of the noise, shrink where there is an arc. */
  private static final double PROVED = 60;

  /** The place among averaged samples is looked for within so many averages about it. */
  private static final int SHARPENED_AVERAGES = 3;

  /** However quiet the record, samples spread by this. */
  private static final double LEAST_SPREAD_SHARE_OF_PEAK = 6e-5;

  /** Arcs are not quite steady; calibrated on generated captures. */
  private static final double AMBIGUITY = 1.3;

  private final Recording recording;
  private final Supply before;

  ArcStart(Recording recording, Supply before) {
    this.recording = recording;
    this.before = before;
  }

  /**
   * The opening before {@code left}; null where no arc is shown. The arc may have been taken for
   * what it left, so that it ends only later.
   */
  @Nullable Edge before(Edge left, Residue residue) {
    int index = (int) Math.floor(recording.time().indexAt(left.seconds()));
    int end = extinguishedAt(index);
    Edge opened = located(end, left);
    return opened == null || !explains(opened, left, residue, end) ? null : opened;
  }

  /**
   * Whether a level that is lost explains the samples up to the arc's end better than what left.
   */
  private boolean explains(Edge opened, Edge left, Residue residue, int end) {
    int start = (int) Math.ceil(recording.time().indexAt(opened.seconds()));
    double sum = 0;
    for (int i = start; i < end; i++) {
      sum += lostAt(i);
    }
    double level = sum / Math.max(1, end - start);
    double squares = 0;
    double squaresLeft = 0;
    int earlier = (int) Math.ceil(recording.time().indexAt(left.seconds()));
    for (int i = Math.min(start, earlier); i < end; i++) {
      double seconds = recording.time().secondsAt(i);
      double lost = lostAt(i) - (i < start ? 0 : level);
      double model = left.covers(seconds) ? left.laterVoltsAt(seconds) : residue.voltsAt(seconds);
      double deviation = i < earlier ? lostAt(i) : recording.volts()[i] - model;
      squares += lost * lost;
      squaresLeft += deviation * deviation;
    }
    return squares < squaresLeft;
  }

  private double lostAt(int index) {
    double supplied = before.model().voltsAt(recording.time().secondsAt(index));
    return Math.signum(supplied) * (supplied - recording.volts()[index]);
  }

  /** The same where what follows {@code left} is known to be no arc. */
  @Nullable Edge endingAt(Edge left) {
    return located((int) Math.floor(recording.time().indexAt(left.seconds())), left);
  }

  /** Where the arc about a departure ends; the departure itself where no arc is shown. */
  int endAfter(int departure) {
    int end = extinguishedAt(departure);
    return located(end, Edge.NONE) == null ? departure : end;
  }

  /** The loss may have been found where the arc begins: it lasts while so much is lost. */
  private int extinguishedAt(int from) {
    int latest = from + (int) (LONGEST_CYCLES * recording.samplesPerCycle());
    double noise = 3 * before.usualSpreadVolts();
    int i = from;
    while (i < Math.min(latest, recording.length())) {
      double supplied = before.model().voltsAt(recording.time().secondsAt(i));
      double lost = lostAt(i);
      boolean isArc = lost > -noise && lost < LARGEST_VOLTS + noise;
      if (!isArc || !LostVoltage.isHigh(supplied)) {
        break;
      }
      i++;
    }
    return i;
  }

  /** The step from nothing lost to a level, by the squares that each place explains. */
  private @Nullable Edge located(int end, Edge extinction) {
    int span = (int) (LONGEST_CYCLES * recording.samplesPerCycle());
    LostVoltage lost = new LostVoltage(recording, before, end, span);
    int to = lost.to();
    int earliest = Math.max(0, to - span / lost.width());
    double noise = before.usualSpreadVolts();
    double independent = Math.max(1, before.informationShare() * lost.width());
    double variance = Math.max(noise * noise / independent, leastVariance());
    double[] costs = new double[to + 1 - earliest];
    int best = to;
    double sum = 0;
    int count = 0;
    for (int k = to - 1; k >= earliest; k--) {
      sum += lost.isTold(k) ? lost.voltsAt(k) : 0;
      count += lost.isTold(k) ? 1 : 0;
      double level = count > 0 ? sum / count : 0;
      boolean possible = level > SMALLEST_VOLTS && level < LARGEST_VOLTS;
      costs[k - earliest] = possible ? -sum * level / variance : 0;
      best = costs[k - earliest] < costs[best - earliest] ? k : best;
    }
    int shortest = Math.max(4, recording.samplesIn(SHORTEST_SECONDS) / lost.width());
    boolean isProved =
        to - best >= shortest
            && best > earliest
            && costs[best - earliest] < -PROVED
            && lost.isArcFrom(best, variance);
    return isProved ? edge(costs, lost.sampleAt(earliest), lost.width(), extinction) : null;
  }

  /** The place among averages, and where that is one of few, among the samples about it. */
  private Edge edge(double[] costs, int start, int width, Edge extinction) {
    Moments averages = Moments.byCosts(costs);
    double place = start + averages.mean() * width;
    return width > 1 && averages.spread() < 1
        ? atFullRate(place, width, extinction)
        : edge(place, width, width * averages.spread(), extinction);
  }

  /** The place between two samples at which {@code width} samples were averaged away. */
  private Edge atFullRate(double place, int width, Edge extinction) {
    int from = Math.max(0, (int) place - SHARPENED_AVERAGES * width);
    int to = Math.min(recording.length(), (int) place + SHARPENED_AVERAGES * width);
    double level = meanLost((int) place + width, to);
    double noise = before.usualSpreadVolts();
    double variance = Math.max(noise * noise / before.informationShare(), leastVariance());
    double[] costs = new double[to - from + 1];
    for (int i = to - 1; i >= from; i--) {
      costs[i - from] = costs[i + 1 - from] - level * (2 * lostAt(i) - level) / variance;
    }
    Moments samples = Moments.byCosts(costs);
    return edge(from + samples.mean(), 1, samples.spread(), extinction);
  }

  /** However quiet the record. */
  private double leastVariance() {
    double spread = LEAST_SPREAD_SHARE_OF_PEAK * recording.peakVolts();
    return spread * spread;
  }

  private double meanLost(int from, int to) {
    double sum = 0;
    for (int i = from; i < to; i++) {
      sum += lostAt(i);
    }
    return sum / Math.max(1, to - from);
  }

  /**
   * An opening.
   *
   * @param place the first sample behind it, also between two
   * @param width the samples that were averaged
   * @param spread standard uncertainty in samples
   */
  private Edge edge(double place, int width, double spread, Edge extinction) {
    double interval = recording.time().intervalSeconds();
    return new Edge(
        recording.time().secondsAt(place - 0.5),
        width * interval / Math.sqrt(12),
        AMBIGUITY * spread * interval,
        0,
        EdgeShape.ABRUPT,
        extinction.window(),
        extinction.laterVolts());
  }
}
