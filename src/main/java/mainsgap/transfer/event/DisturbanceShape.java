package mainsgap.transfer.event;

import mainsgap.transfer.supply.Departure;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Supply;

/**
 * How a voltage goes away from its supply and comes back: a ring swings about it, a surge falls
 * back to it, and a load that is left goes away slowly and is back at once.
 */
final class DisturbanceShape {
  /** A ring swings from one side of the supply to the other within this time, a dead load never. */
  private static final double LONGEST_SWING_SECONDS = 2e-3;

  private static final int FEWEST_SWINGS = 2;

  private static final double LONGEST_SURGE_SECONDS = 1.4e-3;

  /** What lasts less, with its sides, is not told from a pulse. */
  private static final double SHORTEST_GAP_SECONDS = 0.8e-3;

  /** Noise and fits make no step of so many times what counts as away. */
  private static final double STEP_BANDS = 4;

  /** Of a surge the first part is about the highest, and little is left in the last one. */
  private static final int PARTS = 8;

  private static final double HIGH_SHARE = 0.7;
  private static final double LOW_SHARE = 0.25;

  private final Recording recording;
  private final double[] deviations;
  private final int width;
  private final double bandVolts;

  /** Of the samples of a stretch. */
  DisturbanceShape(Recording recording, Supply supply, Disturbance.Stretch stretch) {
    this.recording = recording;
    this.deviations = supply.deviationsIn(recording, stretch.from(), stretch.to());
    this.width = Departure.averagingSamples(recording);
    this.bandVolts = Disturbance.bandVolts(recording, supply, width);
  }

  /** Whether it swings about the supply, or falls back to it from a step: no load that is dead. */
  boolean isInPassing() {
    return swings() || fallsBack();
  }

  /** Whether it goes from one side of the supply to the other again and again, as a ring. */
  boolean swings() {
    double side = 0;
    int since = 0;
    int longest = 0;
    int swings = 0;
    for (int i = 0; i + width <= deviations.length; i += width) {
      double deviation = mean(i, width);
      if (Math.abs(deviation) > bandVolts && Math.signum(deviation) != side) {
        side = Math.signum(deviation);
        longest = Math.max(longest, swings == 0 ? 0 : i - since);
        since = i;
        swings++;
      }
    }
    longest = Math.max(longest, deviations.length - since);
    return swings >= FEWEST_SWINGS && longest <= recording.samplesIn(LONGEST_SWING_SECONDS);
  }

  /** As behind a gap: the load goes away from its supply slowly, and is back at once. */
  boolean endsWithStep() {
    int length = deviations.length;
    int part = length / PARTS;
    if (part < 1 || length < recording.samplesIn(SHORTEST_GAP_SECONDS)) {
      return false;
    }
    double side = Math.signum(mean(length - 2 * part, part));
    double last = 0;
    for (int from = 0; from + 2 * part <= length; from += part) {
      double here = side * mean(from, part);
      if (here < last - bandVolts) {
        return false;
      }
      last = Math.max(last, here);
    }
    return side * mean(0, part) < LOW_SHARE * last && last > STEP_BANDS * bandVolts;
  }

  /** Behind a gap the supply comes with a step, and a residue leaves the supply without one. */
  private boolean fallsBack() {
    int length = deviations.length;
    int part = length / PARTS;
    if (part < 1 || length > recording.samplesIn(LONGEST_SURGE_SECONDS)) {
      return false;
    }
    double side = Math.signum(mean(0, part));
    double most = 0;
    for (int from = 0; from + part <= length; from += part) {
      most = Math.max(most, side * mean(from, part));
    }
    return side * mean(0, part) > HIGH_SHARE * most
        && Math.abs(mean(length - part, part)) < LOW_SHARE * most;
  }

  private double mean(int from, int count) {
    double sum = 0;
    for (int i = from; i < from + count; i++) {
      sum += deviations[i];
    }
    return sum / count;
  }
}
