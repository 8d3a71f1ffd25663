package mainsgap.transfer.instant;

import java.util.List;
import mainsgap.transfer.outcome.CannotMeasureException;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Residue;
import mainsgap.transfer.supply.Segmentation;

/**
 * Where the ends of a gap are looked for, about the borders of its runs.
 *
 * @param runs what feeds the load, run by run
 * @param residue what is left on the load in the gap
 */
record GapSearches(Recording recording, List<Segmentation.Run> runs, Residue residue) {
  /** How far the samples about an instant are looked at, before and after it. */
  static final double REACH_SECONDS = 4e-3;

  /** A run's border is off by less than this. */
  private static final double SLACK_SECONDS = 1.5e-3;

  /** Of a dead load from its residue. */
  private static final double DEAD_WITHIN_SHARE_OF_PEAK = 0.05;

  /** Where the opening at the start of run {@code gapIndex} is looked for. */
  Instants.Search loss(int gapIndex) {
    Segmentation.Run gap = runs.get(gapIndex);
    int slack = recording.samplesIn(SLACK_SECONDS);
    int reach = recording.samplesIn(REACH_SECONDS);
    int from = Math.max(0, gap.from() - reach);
    int to = Math.min(gap.to(), gap.from() + reach);
    if (residue.explainedTo() > gap.from() && residue.explainedTo() < to) {
      to = residue.explainedTo();
    }
    int first = Math.max(from + 1, gap.from() - slack);
    if (gapIndex >= 2) {
      first = Math.max(first, runs.get(gapIndex - 1).from());
    }
    int last = Math.max(first, Math.min(to - 1, gap.from() + slack));
    refuseClipped(first, last, "loss");
    return new Instants.Search(from, to, first, last);
  }

  /** Where the make at the start of run {@code index} is looked for. */
  Instants.Search arrival(int index) {
    Segmentation.Run dead = runs.get(index - 1);
    Segmentation.Run fed = runs.get(index);
    int reach = recording.samplesIn(2 * REACH_SECONDS);
    int from = Math.max(dead.from(), fed.from() - reach);
    if (residue.explainedTo() < fed.from()) {
      from = Math.max(dead.from(), Math.min(from, residue.explainedTo() - reach));
    }
    from = deadFrom(from, fed.from());
    int to = Math.min(recording.length(), fed.from() + reach);
    int slack = recording.samplesIn(SLACK_SECONDS);
    int last = Math.max(from + 1, Math.min(to - 1, fed.from() + slack));
    refuseClipped(fed.from() - slack, Math.min(to, fed.from() + slack), "return");
    return new Instants.Search(from, to, from + 1, last);
  }

  /** Behind an arc, or a fast discharge, the residue explains the samples only from later on. */
  private int deadFrom(int from, int made) {
    double within = DEAD_WITHIN_SHARE_OF_PEAK * recording.peakVolts();
    int i = from;
    while (i < made
        && Math.abs(recording.volts()[i] - residue.voltsAt(recording.time().secondsAt(i)))
            > within) {
      i++;
    }
    return i < made ? i : from;
  }

  private void refuseClipped(int first, int last, String instant) {
    if (recording.isClippedIn(first, last + 1)) {
      throw new CannotMeasureException(
          "clipped in the samples that fix the "
              + instant
              + ": choose a larger range, at least 1.5 times the nominal peak of "
              + Math.round(recording.peakVolts())
              + " V");
    }
  }
}
