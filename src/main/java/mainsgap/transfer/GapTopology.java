package mainsgap.transfer;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import mainsgap.signal.PeriodicModel;
import org.jspecify.annotations.Nullable;

/** Tells what feeds the load, sample by sample, about one event. */
final class GapTopology {
  /**
   * For telling models apart, samples may deviate from each by this share of nominal peak: fits
   * extrapolate, supplies settle.
   */
  private static final double SPREAD_FLOOR_SHARE_OF_PEAK = 0.015;

  /** A run of which less than this share lies at the residue is a transient, no break. */
  private static final double DEAD_SHARE = 0.6;

  private static final double DEAD_WITHIN_SHARE_OF_PEAK = 0.05;

  /** A break or make shorter than this is not told from a spike. */
  private static final double SHORTEST_RUN_SECONDS = 30e-6;

  private final Recording recording;
  private final Supply before;
  private final @Nullable Supply after;
  private final Residue residue;
  private final int from;
  private final int to;

  GapTopology(Recording recording, Supply before, @Nullable Supply after, int departure) {
    this.recording = recording;
    this.before = before;
    this.after = after;
    this.residue = GapResidue.find(recording, before, after, departure);
    int cycle = (int) Math.ceil(recording.samplesPerCycle());
    this.from = Math.max(0, departure - cycle / 2);
    this.to =
        after == null ? recording.length() : Math.min(recording.length(), after.from() + cycle);
  }

  /** What was left on the load in the gap. */
  Residue residue() {
    return residue;
  }

  /** What feeds the load from half a cycle before the departure to a settled cycle. */
  List<Segmentation.Run> runs() {
    double floor = SPREAD_FLOOR_SHARE_OF_PEAK * recording.peakVolts();
    double[] costBefore = costs(before.model(), floor);
    double[] costAfter = after == null ? unreachable() : costs(after.model(), floor);
    double[] costGap = gapCosts(floor);
    List<Segmentation.Run> runs =
        Segmentation.cheapest(
            new Segmentation.Costs(from, costBefore, costGap, costAfter), after != null);
    return withoutTransients(runs);
  }

  private double[] costs(PeriodicModel model, double floor) {
    double[] costs = new double[to - from];
    for (int i = from; i < to; i++) {
      double seconds = recording.time().secondsAt(i);
      double spread = Math.max(floor, model.spreadVoltsAt(seconds));
      double z = (recording.volts()[i] - model.voltsAt(seconds)) / spread;
      costs[i - from] = z * z;
    }
    return costs;
  }

  private double[] unreachable() {
    double[] costs = new double[to - from];
    Arrays.fill(costs, Double.POSITIVE_INFINITY);
    return costs;
  }

  private double[] gapCosts(double floor) {
    double spread = Math.max(floor, residue.spreadVolts());
    double[] costs = new double[to - from];
    for (int i = from; i < to; i++) {
      double z = (recording.volts()[i] - residue.voltsAt(recording.time().secondsAt(i))) / spread;
      costs[i - from] = z * z;
    }
    return costs;
  }

  /** Breaks that are rings, and runs too short to tell, become part of what surrounds them. */
  private List<Segmentation.Run> withoutTransients(List<Segmentation.Run> runs) {
    int shortest = recording.samplesIn(SHORTEST_RUN_SECONDS);
    List<Segmentation.Run> kept = new ArrayList<>();
    for (Segmentation.Run run : runs) {
      boolean isBreak = run.part() == Segmentation.Part.BREAK;
      boolean isMake = run.part() == Segmentation.Part.BEFORE && !kept.isEmpty();
      boolean dropped =
          (isBreak && (run.length() < shortest || !isDead(run)))
              || (isMake && run.length() < shortest);
      Segmentation.Part part =
          !dropped ? run.part() : isBreak ? Segmentation.Part.AFTER : Segmentation.Part.GAP;
      int lastKept = kept.size() - 1;
      if (lastKept >= 0 && kept.get(lastKept).part() == part) {
        kept.set(lastKept, new Segmentation.Run(part, kept.get(lastKept).from(), run.to()));
      } else {
        kept.add(new Segmentation.Run(part, run.from(), run.to()));
      }
    }
    return kept;
  }

  private boolean isDead(Segmentation.Run run) {
    double within = DEAD_WITHIN_SHARE_OF_PEAK * recording.peakVolts();
    int dead = 0;
    for (int i = run.from(); i < run.to(); i++) {
      if (Math.abs(recording.volts()[i]) < within) {
        dead++;
      }
    }
    return dead > DEAD_SHARE * run.length();
  }
}
