package mainsgap.transfer;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Tells by the runs about a departure whether the supply before was left there at all: where it is
 * followed again soon, and for longer than any voltage on its way elsewhere follows it, the loss is
 * later.
 */
final class FollowedAgain {
  private static final double FOLLOWED_SECONDS = 1e-3;

  /** For a disturbance to be over: what is dead before may still be a bounce. */
  private static final double OVER_SECONDS = 1.5e-3;

  /** Shorter than any gap that is a transfer. */
  private static final double SHORT_SECONDS = 0.7e-3;

  /** A ring lasts so long, if the load is never dead in it for long. */
  private static final double LONGEST_SECONDS = 12e-3;

  private static final double DEAD_SECONDS = 0.25e-3;
  private static final double APART_SHARE_OF_PEAK = 0.05;

  /** Behind what lasts longer than a pulse, for longer than contacts bounce. */
  private static final double BEYOND_BOUNCE_SECONDS = 5e-3;

  /** The sides of a disturbance that still lie near the supply. */
  private static final double SIDE_SECONDS = 30e-6;

  private final Recording recording;
  private final Supply before;
  private final List<Segmentation.Run> runs;
  private final AtResidue dead;

  /**
   * One look.
   *
   * @param runs of the cheapest path, the first of them in the supply before
   * @param dead where the load lies at what is left on it
   */
  FollowedAgain(Recording recording, Supply before, List<Segmentation.Run> runs, AtResidue dead) {
    this.recording = recording;
    this.before = before;
    this.runs = runs;
    this.dead = dead;
  }

  /** The first sample behind the last run that follows the supply before again. */
  int leftForGood() {
    int left = runs.get(0).to();
    for (Segmentation.Run run : runs.subList(0, runs.size() - 1)) {
      if (run.part() == Segmentation.Part.AFTER) {
        break;
      }
      boolean isAgain = isFollowedFor(FOLLOWED_SECONDS, run) && isSoon(left, run.from());
      left = isAgain ? run.to() : left;
    }
    return left;
  }

  /**
   * What was away from the supply before for a moment and was no opening of the switch: a pulse or
   * a ring, since the load was not dead when that supply came back, or whatever a whole cycle of
   * the supply follows. Null where there is none.
   */
  Disturbance.@Nullable Stretch disturbance() {
    for (int k = 2; k + 1 < runs.size(); k++) {
      if (runs.get(k + 1).part() != Segmentation.Part.GAP
          && runs.get(k + 1).part() != Segmentation.Part.BEFORE) {
        break;
      }
      if (isOver(runs.get(k)) && (isLongAgo(runs.get(k)) || !dead.isUpToEndOf(runs.get(k - 1)))) {
        int side = recording.samplesIn(SIDE_SECONDS);
        return new Disturbance.Stretch(runs.get(1).from() - side, runs.get(k).from() + side);
      }
    }
    return null;
  }

  private boolean isOver(Segmentation.Run run) {
    int from = runs.get(1).from();
    return isSoon(from, run.from())
        && isFollowedFor(isShort(from, run.from()) ? OVER_SECONDS : BEYOND_BOUNCE_SECONDS, run);
  }

  private boolean isLongAgo(Segmentation.Run run) {
    return isShort(runs.get(1).from(), run.from())
        && isFollowedFor(recording.task().cycleSeconds(), run);
  }

  private boolean isFollowedFor(double seconds, Segmentation.Run run) {
    return run.part() == Segmentation.Part.BEFORE && run.length() >= recording.samplesIn(seconds);
  }

  private boolean isShort(int from, int to) {
    return to - from <= recording.samplesIn(SHORT_SECONDS);
  }

  private boolean isSoon(int from, int to) {
    return isShort(from, to)
        || (to - from <= recording.samplesIn(LONGEST_SECONDS) && !isDeadForLong(from, to));
  }

  /** A gap has such a stretch; a ring, or a surge that decays, passes zero faster. */
  private boolean isDeadForLong(int from, int to) {
    double apart = APART_SHARE_OF_PEAK * recording.peakVolts();
    double offset = before.harmonics().offsetVolts();
    double[] supplied = before.voltsIn(recording.time(), from, to);
    int longest = recording.samplesIn(DEAD_SECONDS);
    int since = from;
    for (int i = from; i < to; i++) {
      double volts = recording.volts()[i];
      boolean isDead =
          Math.abs(volts - offset) < apart && Math.abs(volts - supplied[i - from]) > apart;
      since = isDead ? since : i + 1;
      if (i + 1 - since >= longest) {
        return true;
      }
    }
    return false;
  }
}
