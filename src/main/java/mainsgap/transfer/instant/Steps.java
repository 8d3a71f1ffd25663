package mainsgap.transfer.instant;

import java.util.ArrayList;
import java.util.List;
import mainsgap.transfer.supply.OwnShape;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Residue;
import mainsgap.transfer.supply.Supply;

/**
 * Finds where the voltage steps from one sample to the next, away from the residue and towards the
 * supply after, by more than it moves before and after the step: a contact that makes. Rings and
 * starts of a supply move over many samples; a slow probe smears a step, which then is none here.
 */
final class Steps {
  /** Noise steps by more than this many standard deviations, and stays there, in no record. */
  private static final double NOISE_FACTOR = 4.5;

  /** Ripple steps by less than this share of nominal peak. */
  private static final double SMALLEST_SHARE_OF_PEAK = 0.01;

  /** Rounding steps by a code or so. */
  private static final double CODES = 1.8;

  /** A make closes at least this share of the distance between residue and supply. */
  private static final double SMALLEST_SHARE_OF_DISTANCE = 0.12;

  /** What is looked at before and after a step: shorter than any bounce, longer than a spike. */
  private static final double STAYS_SECONDS = 30e-6;

  private static final int STAYS_SAMPLES = 3;

  /** A make stays away from the residue by so much of its step: a stray of the noise does not. */
  private static final double STAYS_SHARE = 0.5;

  /** A load that was let go moves by less than this share of the step that feeds it again. */
  private static final double WANDERS_SHARE = 0.2;

  /** A swing has been on its way for so long. */
  private static final double SWING_SECONDS = 0.1e-3;

  /** A step is larger than its neighbours by this, and one that goes on as before by more. */
  private static final double ALONE = 1.5;

  private static final double ALONE_GOING_ON = 2.5;

  /** The steps of a fitted cycle are known to this. */
  private static final double OWN_STEP_SECONDS = 0.15e-3;

  /** A contact has come to rest within so many of the longest breaks: what goes on is no bounce. */
  private static final int LONGEST_BOUNCE = 2;

  private final Recording recording;
  private final Residue residue;
  private final Supply after;
  private final OwnShape own;
  private final double smallestVolts;
  private final int stays;

  Steps(Recording recording, Residue residue, Supply after, double noiseVolts) {
    this.recording = recording;
    this.residue = residue;
    this.after = after;
    this.own = new OwnShape(recording, after);
    this.stays = Math.max(STAYS_SAMPLES, recording.samplesIn(STAYS_SECONDS));
    this.smallestVolts =
        Math.max(
            CODES * recording.codeVolts(),
            Math.max(SMALLEST_SHARE_OF_PEAK * recording.peakVolts(), NOISE_FACTOR * noiseVolts));
  }

  /**
   * The first samples of the makes in samples {@code from} (inclusive) to {@code to} (exclusive),
   * each at most {@code within} samples after the one before. What goes on over more than two such
   * spans is no contact that bounces: then the first alone.
   */
  List<Integer> makes(int from, int to, int within) {
    List<Integer> makes = new ArrayList<>();
    int first = Math.max(2, from);
    int end = Math.min(to, recording.length() - 1);
    double[] deviations = after.deviationsIn(recording, first - 2, end + 1);
    for (int i = first; i < end; i++) {
      if (!makes.isEmpty() && i - makes.get(makes.size() - 1) > within) {
        break;
      }
      if (isStep(deviations, i - first + 2)
          && isMake(i)
          && (makes.isEmpty() || isLetGoBefore(i))
          && !own.is(i - stays, i)) {
        makes.add(i);
      }
    }
    boolean isBounce =
        makes.isEmpty() || makes.get(makes.size() - 1) - makes.get(0) <= LONGEST_BOUNCE * within;
    return isBounce ? makes : makes.subList(0, 1);
  }

  /** Whether a deviation steps from the one before, and its neighbours do not. */
  private boolean isStep(double[] deviations, int index) {
    double step = deviations[index] - deviations[index - 1];
    double before = deviations[index - 1] - deviations[index - 2];
    double next = deviations[index + 1] - deviations[index];
    double goingOn = before * step > 0 ? ALONE_GOING_ON : ALONE;
    double alone = Math.abs(step) - Math.max(goingOn * Math.abs(before), ALONE * Math.abs(next));
    return alone > smallestVolts;
  }

  private boolean isMake(int index) {
    double step = deviation(index) - deviation(index - 1);
    double seconds = recording.time().secondsAt(index);
    double distance = after.model().voltsAt(seconds) - residue.voltsAt(seconds);
    return step * distance > 0
        && Math.abs(step) > SMALLEST_SHARE_OF_DISTANCE * Math.abs(distance)
        && !isOwnStep(index, step)
        && Math.abs(fromResidue(index)) > Math.abs(fromResidue(index - 1))
        && staysAway(index, step)
        && !isSwing(index, step);
  }

  /**
   * A contact that makes once more has let the load go before: it lies at its residue, or lies
   * quietly off the supply while it discharges from where it was fed. A ring's crossing does
   * neither.
   */
  private boolean isLetGoBefore(int index) {
    double step = deviation(index) - deviation(index - 1);
    double mean = 0;
    double lacking = 0;
    double residual = 0;
    for (int i = index - stays; i < index; i++) {
      mean += recording.volts()[i] / stays;
      lacking -= deviation(i) * Math.signum(step) / stays;
      residual += Math.abs(fromResidue(i)) / stays;
    }
    double wander = 0;
    for (int i = index - stays; i < index; i++) {
      wander += Math.abs(recording.volts()[i] - mean) / stays;
    }
    boolean isQuiet = wander < WANDERS_SHARE * Math.abs(step);
    return residual < STAYS_SHARE * Math.abs(step)
        || (isQuiet && lacking > Math.max(smallestVolts, STAYS_SHARE * Math.abs(step)));
  }

  private boolean staysAway(int index, double step) {
    int end = Math.min(recording.length(), index + stays);
    double sum = 0;
    for (int i = index; i < end; i++) {
      sum += fromResidue(i);
    }
    return sum / (end - index) * Math.signum(step) > STAYS_SHARE * Math.abs(step);
  }

  /**
   * The voltage has come the step's way with no larger step: what a load that was let go never
   * does.
   */
  private boolean isSwing(int index, double step) {
    int first = Math.max(0, index - recording.samplesIn(SWING_SECONDS));
    for (int i = first + 1; i < index; i++) {
      if (Math.abs(deviation(i) - deviation(i - 1)) > Math.max(smallestVolts, Math.abs(step))) {
        return false;
      }
    }
    double way = (fromResidue(index - 1) - fromResidue(first)) * Math.signum(step);
    return way > smallestVolts;
  }

  /** A step of the supply's own cycle, about where the fit puts it. */
  private boolean isOwnStep(int index, double step) {
    if (!after.isVagueInPlaces()) {
      return false;
    }
    int reach = recording.samplesIn(OWN_STEP_SECONDS);
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int i = index - reach; i <= index + reach; i++) {
      double volts = after.model().voltsAt(recording.time().secondsAt(i));
      low = Math.min(low, volts);
      high = Math.max(high, volts);
    }
    return high - low > Math.abs(step) / 2;
  }

  /** From the settled supply, so that its own steps are none. */
  private double deviation(int index) {
    return recording.volts()[index] - after.model().voltsAt(recording.time().secondsAt(index));
  }

  private double fromResidue(int index) {
    return recording.volts()[index] - residue.voltsAt(recording.time().secondsAt(index));
  }
}
