package mainsgap.transfer.instant;

import mainsgap.transfer.supply.Departure;
import mainsgap.transfer.supply.FedBeside;
import mainsgap.transfer.supply.MovedSupply;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Residue;
import mainsgap.transfer.supply.ResidueFit;
import mainsgap.transfer.supply.SmoothedDeviation;
import mainsgap.transfer.supply.Supply;
import org.jspecify.annotations.Nullable;

/**
 * Fits the residue on the longest stretch after the departure that one residue explains: what comes
 * after it is a make.
 */
public final class GapResidue {
  /** Shorter than the shortest gap that is told from a notch. */
  private static final double FIRST_STRETCH_SECONDS = 0.3e-3;

  /** A load that nothing has fed for so long changes no more. */
  private static final double LONGEST_STRETCH_SECONDS = 120e-3;

  /** Of the stretch from one try to the next: a make is overrun by a fourth at most. */
  private static final double GROWTH = 1.25;

  /** A residue explains a stretch whose samples deviate from it by less than this. */
  private static final double EXPLAINED_SHARE_OF_PEAK = 0.012;

  /** What four samples of noise spread more than it, one in some hundred times. */
  private static final double EXPLAINED_NOISES = 1.3;

  /** One that is none better than the noise lets it be is not bent towards what comes after it. */
  private static final double TIGHT_NOISES = 1.2;

  private static final double TIGHT_SHARE_OF_PEAK = 0.002;

  /** A shorter stretch, as a share of the one explained at all, is too short to tell what it is. */
  private static final double TIGHT_STRETCH_SHARE = 0.3;

  /** A cycle rests where it is within this share of nominal peak about zero. */
  private static final double REST_SHARE_OF_PEAK = 0.05;

  private static final int FEWEST_SAMPLES = 4;

  /** Averages of noise stay within so many of their standard deviations. */
  private static final double APART_NOISES = 4;

  /**
   * So many longer stretches are tried after one that is not explained, once a swing would show.
   */
  private static final int MOST_FAILURES = 5;

  /** A shorter swing tells no frequency: a supply that goes on for a moment looks like it. */
  private static final double SHORT_SWING_CYCLES = 0.25;

  private static final double SWINGS_SHARE_OF_PEAK = 0.2;

  /** A load lies dead beyond doubt where it does for about all of this. */
  private static final double DEAD_SECONDS = 2e-3;

  private static final double DEAD_SHARE = 0.9;

  private GapResidue() {}

  /** Behind a departure; where a supply still fed the load for a moment there, behind that. */
  public static Residue find(
      Recording recording, Supply before, @Nullable Supply after, int departure) {
    int last = after == null ? recording.length() : followedFrom(recording, after);
    int left = left(recording, before, departure);
    Residue found =
        longest(recording, before, left, after == null ? last : Math.max(left + 1, last));
    int step = isFedOn(recording, before, found) ? deadFrom(recording, before, found, last) : -1;
    return step < 0 ? found : longest(recording, before, step, last);
  }

  /**
   * What is left on a load that swung at first, as a motor that runs on, and was then cut off from
   * it.
   *
   * @param from its first sample
   */
  public record CutOff(int from, Residue residue) {}

  /** Behind a swing that ends with a step to a load that lies dead; null where none does. */
  public static @Nullable CutOff behind(
      Recording recording, Supply before, Supply after, Residue swing) {
    int last = followedFrom(recording, after);
    int step = after.hasSteps() ? -1 : deadFrom(recording, before, swing, last);
    return step < 0 ? null : new CutOff(step, longest(recording, before, step, last));
  }

  /**
   * Whether the supply before, at another height and angle, explains a short swing as well: it goes
   * on for a moment behind a disturbance, and no motor runs on.
   */
  private static boolean isFedOn(Recording recording, Supply before, Residue swing) {
    int from = swungFrom(recording, swing);
    int to = swing.explainedTo();
    if (!swing.isMotor() || to - from > SHORT_SWING_CYCLES * recording.samplesPerCycle()) {
      return false;
    }
    double usual = Math.max(swing.spreadVolts(), before.usualSpreadVolts());
    MovedSupply.Move moved = new MovedSupply(recording, before).to(from, to, 1);
    return moved.misfitVolts() < EXPLAINED_NOISES * usual && moved.ratio() > FedBeside.MOTOR_RATIO;
  }

  private static int swungFrom(Recording recording, Residue swing) {
    return (int) Math.round(recording.time().indexAt(swing.referenceSeconds()));
  }

  /** Where a swing ends with a step to a load that lies dead from there on; -1 where none does. */
  private static int deadFrom(Recording recording, Supply before, Residue swing, int last) {
    if (!swing.isMotor()) {
      return -1;
    }
    double offset = before.harmonics().offsetVolts();
    double within = REST_SHARE_OF_PEAK * recording.peakVolts();
    int to = swing.explainedTo();
    int longest = to - swungFrom(recording, swing);
    int latest = Math.min(last, to + (int) ((GROWTH - 1) * longest) + 1);
    int step = to;
    while (step < latest && Math.abs(recording.volts()[step] - offset) > within) {
      step++;
    }
    int end = step + recording.samplesIn(DEAD_SECONDS);
    int dead = 0;
    for (int i = step; i < Math.min(end, last); i++) {
      dead += Math.abs(recording.volts()[i] - offset) < within ? 1 : 0;
    }
    double swung = Math.abs(swing.voltsAt(recording.time().secondsAt(step)));
    boolean isStep = swung > SWINGS_SHARE_OF_PEAK * recording.peakVolts();
    return isStep && dead > DEAD_SHARE * (end - step) ? step : -1;
  }

  private static Residue longest(Recording recording, Supply before, int left, int last) {
    double noise = before.usualSpreadVolts();
    double explained =
        Math.max(EXPLAINED_SHARE_OF_PEAK * recording.peakVolts(), EXPLAINED_NOISES * noise);
    int dead = new ArcStart(recording, before).endAfter(left);
    double stretch = Math.max(FEWEST_SAMPLES, recording.samplesIn(FIRST_STRETCH_SECONDS));
    int settled = dead + Departure.averagingSamples(recording);
    int first = Math.min(settled, Math.max(left, last - (int) stretch));
    double longest = Math.min(last - first, recording.samplesIn(LONGEST_STRETCH_SECONDS));
    Residue best = Residue.level(0, explained, Math.min(last, first + (int) stretch));
    Residue tight = null;
    double tightly = Math.max(TIGHT_NOISES * noise, TIGHT_SHARE_OF_PEAK * recording.peakVolts());
    int failures = 0;
    stretch = Math.min(stretch, longest);
    while (stretch <= longest && failures < MOST_FAILURES) {
      Residue residue =
          ResidueFit.fit(
              recording,
              first,
              first + (int) stretch,
              Math.max(noise, TIGHT_SHARE_OF_PEAK * recording.peakVolts()));
      if (residue.spreadVolts() < explained) {
        best = residue;
        tight = residue.spreadVolts() < tightly ? residue : tight;
        failures = 0;
      } else if (stretch > recording.samplesPerCycle() / 2) {
        failures++;
      }
      stretch = Math.max(stretch + 1, stretch * GROWTH);
    }
    return tight != null && isLong(tight, best, first) ? tight : best;
  }

  private static boolean isLong(Residue tight, Residue best, int first) {
    return tight.explainedTo() - first > TIGHT_STRETCH_SHARE * (best.explainedTo() - first);
  }

  /**
   * Where the voltage begins to stay away from the supply before: earlier than {@code departure}
   * where it goes away slowly.
   */
  private static int left(Recording recording, Supply before, int departure) {
    int earliest = Math.max(1, departure - (int) (recording.samplesPerCycle() / 2));
    double apart = apartVolts(recording, before);
    int whole = departure - Departure.averagingSamples(recording);
    SmoothedDeviation smoothed = new SmoothedDeviation(recording, before, whole - 1);
    int i = whole;
    while (i > earliest && Math.abs(smoothed.at(i - 1)) > apart) {
      i--;
    }
    return i < whole ? i : departure;
  }

  /**
   * From where on the voltage follows the supply after up to its fit: a residue ends there at the
   * latest. A supply that still rises, or rings, is followed later; a cycle that rests is followed
   * by a dead load too, so that of such a rest only the end tells.
   */
  private static int followedFrom(Recording recording, Supply after) {
    double apart = apartVolts(recording, after);
    SmoothedDeviation smoothed = new SmoothedDeviation(recording, after, after.from() - 1);
    int i = after.from();
    while (i > 0 && Math.abs(smoothed.at(i - 1)) < apart) {
      i--;
    }
    double rest = REST_SHARE_OF_PEAK * recording.peakVolts();
    while (after.hasSteps()
        && i < after.from()
        && Math.abs(after.model().voltsAt(recording.time().secondsAt(i))) < rest) {
      i++;
    }
    return i - Departure.averagingSamples(recording) / 2;
  }

  private static double apartVolts(Recording recording, Supply supply) {
    double noise = supply.usualSpreadVolts() / Math.sqrt(Departure.averagingSamples(recording));
    return Math.max(EXPLAINED_SHARE_OF_PEAK * recording.peakVolts(), APART_NOISES * noise);
  }
}
