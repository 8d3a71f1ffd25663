package mainsgap.transfer.event;

import java.util.List;
import mainsgap.transfer.supply.AtResidue;
import mainsgap.transfer.supply.DeadLoad;
import mainsgap.transfer.supply.LongestRun;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Segmentation;
import mainsgap.transfer.supply.Supply;
import org.jspecify.annotations.Nullable;

/**
 * Tells by the runs about a departure whether the supply before was left there at all: where it is
 * followed again soon, and for longer than any voltage on its way elsewhere follows it, the loss is
 * later.
 */
public final class FollowedAgain {
  private static final double FOLLOWED_SECONDS = 1e-3;

  /** For a disturbance to be over: what is dead before may still be a bounce. */
  private static final double OVER_SECONDS = 1.5e-3;

  /** Shorter than any gap that is a transfer. */
  private static final double SHORT_SECONDS = 0.7e-3;

  /** A ring lasts so long, if the load is never dead in it for long. */
  private static final double LONGEST_SECONDS = 12e-3;

  /** A surge that throws the voltage across zero is over sooner. */
  private static final double SURGE_SECONDS = 2e-3;

  private static final double DEAD_SECONDS = 0.25e-3;
  private static final double APART_SHARE_OF_PEAK = 0.05;
  private static final double AT_ZERO_SHARE = 0.6;

  /** A dead load for less is a notch, where the supply goes on for longer than contacts bounce. */
  private static final double NOTCH_SECONDS = 0.45e-3;

  private static final double BEYOND_BOUNCE_SECONDS = 5e-3;

  /** No contact bounces so long after it has made: what was short before was a notch. */
  private static final double BEYOND_DOUBT_CYCLES = 0.9;

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
  public FollowedAgain(
      Recording recording, Supply before, List<Segmentation.Run> runs, AtResidue dead) {
    this.recording = recording;
    this.before = before;
    this.runs = runs;
    this.dead = dead;
  }

  /** The first sample behind the supply before. */
  public int left() {
    return runs.get(0).to();
  }

  /**
   * The first sample behind the last run that follows the supply before again. A return in phase
   * with that supply follows it too, up to where the supply after fits as well.
   */
  public int leftForGood() {
    int left = left();
    for (int k = 1; k + 1 < runs.size() && runs.get(k + 1).part() != Segmentation.Part.AFTER; k++) {
      Segmentation.Run run = runs.get(k);
      boolean isAgain = isFollowedFor(FOLLOWED_SECONDS, run) && isSoon(left, run.from());
      left = isAgain || isSurge(left, run) ? run.to() : left;
    }
    return left;
  }

  /**
   * What was away from the supply before for a moment and was no opening of the switch, since the
   * load was not dead: a pulse, a ring, or a notch. Null where there is none.
   */
  public Disturbance.@Nullable Stretch disturbance() {
    for (int k = 2; k + 1 < runs.size() && runs.get(k + 1).part() != Segmentation.Part.AFTER; k++) {
      boolean isNone = isNotch(runs.get(k)) || !isOpening(runs.get(k - 1));
      if ((isOver(runs.get(k)) && isNone) || isSurge(left(), runs.get(k))) {
        int side = recording.samplesIn(SIDE_SECONDS);
        return new Disturbance.Stretch(left() - side, runs.get(k).from() + side);
      }
    }
    return null;
  }

  private boolean isOver(Segmentation.Run run) {
    return isSoon(left(), run.from())
        && isFollowedFor(isShort(left(), run.from()) ? OVER_SECONDS : BEYOND_BOUNCE_SECONDS, run);
  }

  private boolean isNotch(Segmentation.Run run) {
    int away = run.from() - left();
    return (away <= recording.samplesIn(NOTCH_SECONDS) && isFollowedFor(BEYOND_BOUNCE_SECONDS, run))
        || (isShort(left(), run.from())
            && isFollowedFor(BEYOND_DOUBT_CYCLES * recording.task().cycleSeconds(), run));
  }

  /**
   * Dead where a later gap lies, or at zero; or dead in any other way for longer than a notch; or
   * so long as a gap, and not in passing beyond doubt: a residue may be anywhere.
   */
  private boolean isOpening(Segmentation.Run away) {
    int from = left();
    if (dead.is(away) || dead.isUpToEndOf(away) || isAtZero(from, away.to())) {
      return true;
    }
    Disturbance.Stretch stretch = new Disturbance.Stretch(from, away.to());
    boolean mayBe =
        !isShort(from, away.to())
            || (away.to() - from > recording.samplesIn(NOTCH_SECONDS)
                && new DeadLoad(recording, before).isIn(from, away.to()));
    return mayBe && !new DisturbanceShape(recording, before, stretch).isInPassing();
  }

  /**
   * Whether the voltage was thrown to the other side of zero, fell back to its supply from there,
   * and that goes on for longer than contacts bounce. What is left on a load does not change its
   * sign at once, and what the kick of a coil begins does not fall back.
   */
  private boolean isSurge(int from, Segmentation.Run run) {
    return run.from() - from <= recording.samplesIn(SURGE_SECONDS)
        && isFollowedFor(BEYOND_BOUNCE_SECONDS, run)
        && isThrownAcross(from)
        && new DisturbanceShape(recording, before, new Disturbance.Stretch(from, run.from()))
            .isInPassing();
  }

  private boolean isThrownAcross(int from) {
    int to = Math.min(recording.length(), from + recording.samplesIn(SIDE_SECONDS));
    double offset = before.harmonics().offsetVolts();
    double[] supplied = before.voltsIn(recording.time(), from, to);
    double across = 0;
    for (int i = from; i < to; i++) {
      double side = Math.signum(supplied[i - from] - offset);
      across -= side * (recording.volts()[i] - offset) / (to - from);
    }
    return across > APART_SHARE_OF_PEAK * recording.peakVolts();
  }

  private boolean isAtZero(int from, int to) {
    double within = APART_SHARE_OF_PEAK * recording.peakVolts();
    double offset = before.harmonics().offsetVolts();
    int near = 0;
    for (int i = from; i < to; i++) {
      near += Math.abs(recording.volts()[i] - offset) < within ? 1 : 0;
    }
    return near > AT_ZERO_SHARE * (to - from);
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
    int longest =
        LongestRun.of(
            from,
            to,
            i -> {
              double volts = recording.volts()[i];
              return Math.abs(volts - offset) < apart
                  && Math.abs(volts - supplied[i - from]) > apart;
            });
    return longest >= recording.samplesIn(DEAD_SECONDS);
  }
}
