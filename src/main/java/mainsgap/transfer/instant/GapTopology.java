package mainsgap.transfer.instant;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import mainsgap.signal.PeriodicModel;
import mainsgap.transfer.event.FollowedAgain;
import mainsgap.transfer.supply.AtResidue;
import mainsgap.transfer.supply.KeptVoltage;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Residue;
import mainsgap.transfer.supply.ResidueFit;
import mainsgap.transfer.supply.Segmentation;
import mainsgap.transfer.supply.Supply;
import org.jspecify.annotations.Nullable;

/** Tells what feeds the load, sample by sample, about one event. */
public final class GapTopology {
  /**
   * For telling models apart, samples may deviate from each by this share of nominal peak: fits
   * extrapolate, supplies settle.
   */
  private static final double SPREAD_FLOOR_SHARE_OF_PEAK = 0.008;

  private static final double DEAD_WITHIN_SHARE_OF_PEAK = 0.05;

  /** A break or make shorter than this is not told from a spike. */
  private static final double SHORTEST_RUN_SECONDS = 30e-6;

  /** A sine passes the dead level faster than this. */
  private static final double SHORTEST_DWELL_SECONDS = 0.6e-3;

  private static final double REST_REACH_SECONDS = 0.2e-3;

  private final Recording recording;
  private final Supply before;
  private final @Nullable Supply after;
  private final Residue residue;
  private final int departure;
  private final int from;
  private final int to;
  private final AtResidue dead;
  private final FollowedAgain followedAgain;
  private final List<Segmentation.Run> runs;

  /** What feeds the load from half a cycle before a departure on. */
  public GapTopology(Recording recording, Supply before, @Nullable Supply after, int departure) {
    this(recording, before, after, departure, GapResidue.find(recording, before, after, departure));
  }

  private GapTopology(
      Recording recording, Supply before, @Nullable Supply after, int departure, Residue residue) {
    this.recording = recording;
    this.before = before;
    this.after = after;
    this.residue = residue;
    this.departure = departure;
    int cycle = (int) Math.ceil(recording.samplesPerCycle());
    this.from = Math.max(0, departure - cycle / 2);
    this.to =
        after == null ? recording.length() : Math.min(recording.length(), after.from() + cycle);
    this.dead = new AtResidue(recording, residue);
    List<Segmentation.Run> found = Segmentation.cheapest(from, to, costs(), after != null);
    this.followedAgain = new FollowedAgain(recording, before, found, dead);
    this.runs = List.copyOf(segmented(found));
  }

  /** What was left on the load in the gap. */
  public Residue residue() {
    return residue;
  }

  /** What feeds the load from half a cycle before the departure to a settled cycle. */
  public List<Segmentation.Run> runs() {
    return runs;
  }

  /** The same where the supply before is left at another sample, from where on a load is dead. */
  public GapTopology leftAt(int left) {
    Residue found = GapResidue.find(recording, before, after, left);
    return new GapTopology(recording, before, after, departure, found);
  }

  /**
   * The same where the load kept a voltage near that of the supply before, up to where the supply
   * after seems to take over at once; null where it did not.
   */
  public @Nullable GapTopology withKeptVoltage() {
    boolean isAtOnce =
        runs.size() > 1
            && runs.get(0).part() == Segmentation.Part.BEFORE
            && runs.get(1).part() == Segmentation.Part.AFTER;
    int step = isAtOnce ? runs.get(1).from() : 0;
    int since = isAtOnce ? new KeptVoltage(recording, before).since(step) : -1;
    if (since < 0) {
      return null;
    }
    Residue kept = ResidueFit.fit(recording, since, step, before.usualSpreadVolts());
    return new GapTopology(recording, before, after, departure, kept);
  }

  /** What tells whether the supply before was left at the departure at all. */
  public FollowedAgain followedAgain() {
    return followedAgain;
  }

  private List<Segmentation.Run> segmented(List<Segmentation.Run> runs) {
    return withDwell(withGapFirst(withoutCrossings(withoutTransients(runs))));
  }

  private Segmentation.Costs costs() {
    double interval = recording.time().intervalSeconds();
    PeriodicModel.Row rowBefore = before.model().every(interval);
    PeriodicModel.Row rowAfter = after == null ? null : after.model().every(interval);
    return (first, count, costsBefore, costsGap, costsAfter) -> {
      fill(before, rowBefore, first, count, costsBefore);
      fillGap(first, count, costsGap);
      if (after == null || rowAfter == null) {
        Arrays.fill(costsAfter, Double.POSITIVE_INFINITY);
      } else {
        fill(after, rowAfter, first, count, costsAfter);
      }
    };
  }

  private double floorVolts() {
    return SPREAD_FLOOR_SHARE_OF_PEAK * recording.peakVolts();
  }

  private void fill(Supply supply, PeriodicModel.Row row, int first, int count, double[] costs) {
    double floor = floorVolts();
    row.fill(costs, count, recording.time().secondsAt(first));
    for (int k = 0; k < count; k++) {
      double spread = supply.model().spreadVoltsAt(recording.time().secondsAt(first + k));
      double z = (recording.volts()[first + k] - costs[k]) / Math.max(floor, spread);
      costs[k] = z * z;
    }
  }

  private void fillGap(int first, int count, double[] costs) {
    double spread = Math.max(floorVolts(), residue.spreadVolts());
    for (int k = 0; k < count; k++) {
      double left = residue.voltsAt(recording.time().secondsAt(first + k));
      double z = (recording.volts()[first + k] - left) / spread;
      costs[k] = z * z;
    }
  }

  /** Breaks that are rings, and makes that only cross the supply before, join what is about. */
  private List<Segmentation.Run> withoutTransients(List<Segmentation.Run> runs) {
    List<Segmentation.Run> kept = new ArrayList<>();
    for (int k = 0; k < runs.size(); k++) {
      Segmentation.Run run = runs.get(k);
      Segmentation.Part part = run.part();
      if (part == Segmentation.Part.BREAK && !isBreak(run) && !endsFirstGap(runs, k)) {
        part = Segmentation.Part.AFTER;
      } else if (part == Segmentation.Part.BEFORE && k > 0 && !isRemake(runs, k)) {
        part = Segmentation.Part.GAP;
      }
      int lastKept = kept.size() - 1;
      if (lastKept >= 0 && kept.get(lastKept).part() == part) {
        kept.set(lastKept, new Segmentation.Run(part, kept.get(lastKept).from(), run.to()));
      } else {
        kept.add(new Segmentation.Run(part, run.from(), run.to()));
      }
    }
    return kept;
  }

  /**
   * A voltage on its way from the supply before to the residue, as behind an arc, may cross the
   * supply after: a make comes out of a dead load, or the break after it has bounced.
   */
  private List<Segmentation.Run> withoutCrossings(List<Segmentation.Run> runs) {
    for (int k = 1; k + 2 < runs.size(); k++) {
      boolean crosses =
          runs.get(k - 1).part() == Segmentation.Part.GAP
              && runs.get(k).part() == Segmentation.Part.AFTER
              && runs.get(k + 1).part() == Segmentation.Part.BREAK
              && !dead.isAtEndOf(runs.get(k - 1));
      if (crosses) {
        List<Segmentation.Run> joined = new ArrayList<>(runs);
        int from = runs.get(k - 1).from();
        joined.set(k - 1, new Segmentation.Run(Segmentation.Part.GAP, from, runs.get(k + 1).to()));
        joined.subList(k, k + 2).clear();
        return withoutCrossings(joined);
      }
    }
    return runs;
  }

  /**
   * A supply that seems to take over without a gap and breaks within one cycle has only bounced:
   * the gap began where the supply before was left.
   */
  private List<Segmentation.Run> withGapFirst(List<Segmentation.Run> runs) {
    boolean bounces =
        runs.size() > 2
            && runs.get(0).part() == Segmentation.Part.BEFORE
            && runs.get(1).part() == Segmentation.Part.AFTER
            && runs.get(2).part() == Segmentation.Part.BREAK
            && runs.get(1).length() < recording.samplesPerCycle();
    if (!bounces) {
      return runs;
    }
    List<Segmentation.Run> gapFirst = new ArrayList<>(runs);
    gapFirst.set(
        1, new Segmentation.Run(Segmentation.Part.GAP, runs.get(1).from(), runs.get(2).to()));
    gapFirst.remove(2);
    return gapFirst;
  }

  /**
   * A supply whose cycle rests at zero may have come during such a rest or with it: where it seems
   * to take over in a rest, the rest is a gap whose end is to be looked for.
   */
  private List<Segmentation.Run> withDwell(List<Segmentation.Run> runs) {
    for (int k = 1; k < runs.size(); k++) {
      Segmentation.Run run = runs.get(k);
      if (run.part() == Segmentation.Part.AFTER
          && runs.get(k - 1).part() == Segmentation.Part.BEFORE) {
        int start = restFrom(run);
        int end = start;
        while (end < run.to() && (isLow(end) || isResting(end))) {
          end++;
        }
        if (end - start > recording.samplesIn(SHORTEST_DWELL_SECONDS) && end < run.to()) {
          List<Segmentation.Run> split = new ArrayList<>(runs);
          int since = runs.get(k - 1).from();
          split.set(k - 1, new Segmentation.Run(Segmentation.Part.BEFORE, since, start));
          split.set(k, new Segmentation.Run(Segmentation.Part.GAP, start, end));
          split.add(k + 1, new Segmentation.Run(Segmentation.Part.AFTER, end, run.to()));
          return split;
        }
      }
    }
    return runs;
  }

  /** Where both supplies lie alike before the rest, nothing tells where the one ends. */
  private int restFrom(Segmentation.Run run) {
    int latest = Math.min(run.to(), run.from() + recording.samplesIn(REST_REACH_SECONDS));
    int start = run.from();
    while (start < latest && !isLow(start)) {
      start++;
    }
    return start < latest ? start : run.from();
  }

  private boolean isLow(int index) {
    return isLow(recording.volts()[index]);
  }

  /** Mains may still be about in it. */
  private boolean isResting(int index) {
    return after != null
        && after.hasSteps()
        && isLow(after.model().voltsAt(recording.time().secondsAt(index)));
  }

  private boolean isLow(double volts) {
    return Math.abs(volts) < DEAD_WITHIN_SHARE_OF_PEAK * recording.peakVolts();
  }

  private boolean isBreak(Segmentation.Run run) {
    return run.length() >= recording.samplesIn(SHORTEST_RUN_SECONDS) && dead.is(run);
  }

  /**
   * No gap has been before: what looked like the supply after only crossed it, as an arc does, and
   * what broke is the gap if it ends dead.
   */
  private boolean endsFirstGap(List<Segmentation.Run> runs, int k) {
    return k == 2 && runs.get(0).part() == Segmentation.Part.BEFORE && dead.isAtEndOf(runs.get(k));
  }

  /** The mains contact made again, if the load is dead again after it. */
  private boolean isRemake(List<Segmentation.Run> runs, int k) {
    return runs.get(k).length() >= recording.samplesIn(SHORTEST_RUN_SECONDS)
        && k + 1 < runs.size()
        && dead.isUpToEndOf(runs.get(k - 1))
        && (dead.is(runs.get(k + 1)) || dead.isAtEndOf(runs.get(k + 1)))
        && !isCrossing(runs.get(k + 1));
  }

  /** As the swing of a make has it, whose top may lie along the supply before. */
  private boolean isCrossing(Segmentation.Run run) {
    return run.length() < recording.samplesIn(SHORTEST_DWELL_SECONDS) && dead.isCrossedIn(run);
  }
}
