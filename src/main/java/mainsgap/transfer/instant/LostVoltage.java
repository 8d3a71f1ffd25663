package mainsgap.transfer.instant;

import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Supply;

/**
 * What a load lacks of the supply before in the two half cycles up to where an arc may have ended,
 * in means of so many samples that there are a few thousand of them: positive where something is
 * lost against the current, whichever way it flows. Tells whether that is an arc's.
 */
final class LostVoltage {
  private static final int MEANS = 2_000;

  /** The arc hides where the supply is below it. */
  private static final double LOW_VOLTS = 30;

  /** What an arc takes away varies by this share of it, beside the noise; a discharge by more. */
  private static final double VARIES_SHARE = 0.3;

  private static final double VARIES_NOISES = 1.5;

  private static final double UNSTEADY_SHARE = 0.3;
  private static final double CHANGING_SHARE = 0.36;

  /** A supply so much higher than the arc shows how much of it is lost. */
  private static final double ABOVE_ARC_RATIO = 1.2;

  private static final int FEWEST_ABOVE = 6;
  private static final double LOST_ON_SHARE = 0.15;

  private final int start;
  private final int width;
  private final int to;
  private final double[] volts;
  private final double[] heights;

  /**
   * Up to sample {@code end}.
   *
   * @param span the samples for which an arc can last
   */
  LostVoltage(Recording recording, Supply before, int end, int span) {
    int from = Math.max(0, end - 2 * span);
    this.width = Math.max(1, (end - from) / MEANS);
    int means = (end - from) / width;
    this.start = end - means * width;
    this.volts = new double[means];
    this.heights = new double[means];
    int told = 0;
    for (int k = 0; k < means; k++) {
      int first = start + k * width;
      double mean = 0;
      for (int i = first; i < first + width; i++) {
        mean += recording.volts()[i] / width;
      }
      double middleSeconds = recording.time().secondsAt(first + (width - 1) / 2.0);
      double supplied = before.model().voltsAt(middleSeconds);
      volts[k] = Math.signum(supplied) * (supplied - mean);
      heights[k] = Math.abs(supplied);
      told = isHigh(supplied) ? k + 1 : told;
    }
    this.to = told;
  }

  /** Whether a supply is so far from zero that an arc's voltage can be told from it. */
  static boolean isHigh(double suppliedVolts) {
    return Math.abs(suppliedVolts) > LOW_VOLTS;
  }

  /** The samples in a mean. */
  int width() {
    return width;
  }

  /** One after the last mean at which an arc can be told. */
  int to() {
    return to;
  }

  /** The first sample of mean {@code index}. */
  int sampleAt(int index) {
    return start + index * width;
  }

  /** Lost in mean {@code index}. */
  double voltsAt(int index) {
    return volts[index];
  }

  /** Whether mean {@code index} can tell an arc. */
  boolean isTold(int index) {
    return isHigh(heights[index]);
  }

  /**
   * Whether from mean {@code from} on a level is lost, and none before it.
   *
   * @param variance of the noise of a mean, in square volts
   */
  boolean isArcFrom(int from, double variance) {
    double level = mean(from, to);
    return isLevel(from, level, variance)
        && Math.abs(mean(0, from)) < UNSTEADY_SHARE * level
        && isSteady(from, level)
        && isLostOn(level);
  }

  private boolean isLevel(int from, double level, double variance) {
    double squares = 0;
    int count = 0;
    for (int k = from; k < to; k++) {
      squares += isTold(k) ? volts[k] * volts[k] : 0;
      count += isTold(k) ? 1 : 0;
    }
    double varies = VARIES_SHARE * level;
    double noise = VARIES_NOISES * VARIES_NOISES * variance;
    return squares / count - level * level < varies * varies + noise;
  }

  /** A residue that decays loses more and more. */
  private boolean isSteady(int from, double level) {
    int middle = (from + to) / 2;
    return Math.abs(mean(middle, to) - mean(from, middle)) < CHANGING_SHARE * level;
  }

  /** An arc burns on where the supply gets low; where a notch is over, the supply is back. */
  private boolean isLostOn(double level) {
    double sum = 0;
    int count = 0;
    for (int k = to; k < volts.length; k++) {
      boolean isAbove = heights[k] > ABOVE_ARC_RATIO * level;
      sum += isAbove ? volts[k] : 0;
      count += isAbove ? 1 : 0;
    }
    return count < FEWEST_ABOVE || sum > LOST_ON_SHARE * level * count;
  }

  /** NaN where none of them can tell an arc. */
  private double mean(int first, int end) {
    double sum = 0;
    int count = 0;
    for (int k = first; k < end; k++) {
      sum += isTold(k) ? volts[k] : 0;
      count += isTold(k) ? 1 : 0;
    }
    return count > 0 ? sum / count : Double.NaN;
  }
}
