package mainsgap.transfer.instant;

import java.util.Arrays;
import mainsgap.transfer.edge.Edge;
import mainsgap.transfer.edge.EdgeShape;
import mainsgap.transfer.edge.Moments;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Residue;
import mainsgap.transfer.supply.Supply;
import org.jspecify.annotations.Nullable;

/**
 * Finds where a contact opened so shortly before a zero crossing that its arc is no level that is
 * lost for a while (which {@link ArcStart} looks for): the load's voltage falls by the arc's,
 * follows the supply less that and stays at zero from where the supply is lower than the arc. The
 * arc's voltage is tried in steps of a volt, from common practice.
 */
final class ShortArc {
  /** About 14 degrees at 50 Hz. */
  private static final double LONGEST_SECONDS = 0.8e-3;

  private static final int SMALLEST_VOLTS = 7;
  private static final int LARGEST_VOLTS = 23;

  /** By how much squared deviations, in units of the noise, are less than those of what left. */
  private static final double PROVED = 30;

  private static final int FEWEST_SAMPLES = 4;

  private static final double BEHIND_SECONDS = 0.3e-3;

  /** The mean square of what is left, in units of the noise. */
  private static final double MOST_SQUARES_BEHIND = 4;

  /** As for longer arcs, which are not quite steady either. */
  private static final double AMBIGUITY = 1.3;

  /** However quiet the record, samples spread by this. */
  private static final double LEAST_SPREAD_SHARE_OF_PEAK = 6e-5;

  private final Recording recording;
  private final Supply before;
  private final int crossing;
  private final int from;

  private ShortArc(Recording recording, Supply before, int crossing) {
    this.recording = recording;
    this.before = before;
    this.crossing = crossing;
    this.from = Math.max(0, crossing - 2 * recording.samplesIn(LONGEST_SECONDS));
  }

  /** The opening about {@code left}; null where no arc is shown. */
  static @Nullable Edge about(Recording recording, Supply before, Edge left, Residue residue) {
    int index = (int) Math.floor(recording.time().indexAt(left.seconds()));
    int crossing = crossing(recording, before, index);
    return crossing < 0
        ? null
        : new ShortArc(recording, before, crossing).located(left, index, residue);
  }

  /** The first sample behind the crossing that ends the arc; negative where none is near. */
  private static int crossing(Recording recording, Supply before, int index) {
    int latest = Math.min(recording.length(), index + recording.samplesIn(LONGEST_SECONDS));
    double sign = Math.signum(volts(recording, before, index));
    for (int i = index; i < latest; i++) {
      if (sign * volts(recording, before, i) < 0) {
        return i;
      }
    }
    return -1;
  }

  private static double volts(Recording recording, Supply supply, int index) {
    return supply.model().voltsAt(recording.time().secondsAt(index));
  }

  private @Nullable Edge located(Edge left, int index, Residue residue) {
    double[] supplied = before.voltsIn(recording.time(), from, crossing);
    double[] costs = new double[supplied.length + 1];
    Arrays.fill(costs, Double.POSITIVE_INFINITY);
    for (int arc = SMALLEST_VOLTS; arc <= LARGEST_VOLTS; arc++) {
      takeLower(costs, supplied, arc);
    }
    int best = 0;
    for (int k = 0; k < costs.length; k++) {
      best = costs[k] < costs[best] ? k : best;
    }
    boolean isProved =
        supplied.length - best >= FEWEST_SAMPLES
            && isDeadBehind(residue)
            && leftCost(supplied, left, index, residue) - costs[best] > PROVED;
    return isProved ? edge(Moments.byCosts(costs), left) : null;
  }

  /** The crossing ends an arc; what swings about the load does not end there. */
  private boolean isDeadBehind(Residue residue) {
    int to = Math.min(recording.length(), crossing + recording.samplesIn(BEHIND_SECONDS));
    double squares = 0;
    for (int i = crossing; i < to; i++) {
      squares += square(residue.voltsAt(recording.time().secondsAt(i)) - recording.volts()[i]);
    }
    return squares < MOST_SQUARES_BEHIND * (to - crossing);
  }

  /** Of the samples up to the crossing, for an opening at each of them. */
  private void takeLower(double[] costs, double[] supplied, double arcVolts) {
    double cost = 0;
    for (int k = 0; k < supplied.length; k++) {
      cost += square(behind(supplied[k], arcVolts) - recording.volts()[from + k]);
    }
    for (int k = 0; k <= supplied.length; k++) {
      costs[k] = Math.min(costs[k], cost);
      if (k < supplied.length) {
        double volts = recording.volts()[from + k];
        cost += square(supplied[k] - volts) - square(behind(supplied[k], arcVolts) - volts);
      }
    }
  }

  private static double behind(double suppliedVolts, double arcVolts) {
    return Math.signum(suppliedVolts) * Math.max(0, Math.abs(suppliedVolts) - arcVolts);
  }

  private double leftCost(double[] supplied, Edge left, int index, Residue residue) {
    double cost = 0;
    for (int k = 0; k < supplied.length; k++) {
      double seconds = recording.time().secondsAt(from + k);
      double model = supplied[k];
      if (from + k > index) {
        model = left.covers(seconds) ? left.laterVoltsAt(seconds) : residue.voltsAt(seconds);
      }
      cost += square(model - recording.volts()[from + k]);
    }
    return cost;
  }

  /** In units of the noise. */
  private double square(double volts) {
    double noise = before.usualSpreadVolts();
    double spread = LEAST_SPREAD_SHARE_OF_PEAK * recording.peakVolts();
    double least = spread * spread;
    return volts * volts / Math.max(noise * noise / before.informationShare(), least);
  }

  private Edge edge(Moments places, Edge extinction) {
    double interval = recording.time().intervalSeconds();
    return new Edge(
        recording.time().secondsAt(from + places.mean() - 0.5),
        interval / Math.sqrt(12),
        AMBIGUITY * places.spread() * interval,
        0,
        EdgeShape.ABRUPT,
        extinction.window(),
        extinction.laterVolts());
  }
}
