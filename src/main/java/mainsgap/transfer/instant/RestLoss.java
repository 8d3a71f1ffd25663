package mainsgap.transfer.instant;

import mainsgap.transfer.edge.Edge;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Residue;
import mainsgap.transfer.supply.Supply;
import org.jspecify.annotations.Nullable;

/**
 * The loss of an output whose cycle rests where the load lies when it is let go: within such a rest
 * nothing shows when it was lost.
 */
final class RestLoss {
  /** Closer to what is left than this share of nominal peak the supply tells nothing. */
  private static final double ALIKE_SHARE_OF_PEAK = 0.05;

  /** The steps of a fitted cycle are known to this. */
  private static final double OWN_STEP_SECONDS = 0.15e-3;

  /** A supply that passes what is left does so in less. */
  static final double SHORTEST_REST_SECONDS = 0.5e-3;

  private final Recording recording;
  private final Supply before;
  private final Residue residue;

  RestLoss(Recording recording, Supply before, Residue residue) {
    this.recording = recording;
    this.before = before;
    this.residue = residue;
  }

  /** The loss within a rest; null where it lies where it was found. */
  @Nullable Edge bounded(Edge found) {
    int rest = before.hasSteps() ? restAbout(found) : -1;
    if (rest < 0) {
      return null;
    }
    int from = rest;
    while (from > 0 && isAlike(from - 1)) {
      from--;
    }
    int to = rest + 1;
    while (to < recording.length() && isAlike(to)) {
      to++;
    }
    if (to - from < recording.samplesIn(SHORTEST_REST_SECONDS)) {
      return null;
    }
    double interval = recording.time().intervalSeconds();
    return new Edge(
        recording.time().secondsAt(0.5 * (from + to) - 0.5),
        interval / Math.sqrt(12),
        0,
        (to - from) * interval / Math.sqrt(12),
        found.shape(),
        found.window(),
        found.laterVolts());
  }

  /** A sample of the rest that an instant lies in, or at either end of; -1 where there is none. */
  private int restAbout(Edge found) {
    int middle = (int) Math.round(recording.time().indexAt(found.seconds()));
    int reach = recording.samplesIn(OWN_STEP_SECONDS);
    for (int off = 0; off <= reach; off++) {
      if (isAlike(middle + off)) {
        return middle + off;
      }
      if (isAlike(middle - off)) {
        return middle - off;
      }
    }
    return -1;
  }

  private boolean isAlike(int index) {
    if (index < 0 || index >= recording.length()) {
      return false;
    }
    double seconds = recording.time().secondsAt(index);
    double apart = before.model().voltsAt(seconds) - residue.voltsAt(seconds);
    return Math.abs(apart) < ALIKE_SHARE_OF_PEAK * recording.peakVolts();
  }
}
