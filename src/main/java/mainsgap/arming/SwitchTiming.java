package mainsgap.arming;

import java.util.List;

/**
 * Where on the wave a commanded switch opens, as data. What it does not fix is measured.
 *
 * @param randomCycles an opening is delayed by a random time, even over so many whole cycles, so
 *     that the points on wave spread; 0 for no delay
 * @param anglesDegrees the angles at which it opens, in turn; empty where they are left to chance
 * @param seed fixes the random delays
 */
public record SwitchTiming(int randomCycles, List<Double> anglesDegrees, long seed) {
  /** The hand's own time: nothing is added. */
  public static final SwitchTiming BY_HAND = new SwitchTiming(0, List.of(), 0);

  /** Longer delays only cost time: one cycle holds every point on wave. */
  public static final int MOST_CYCLES = 1000;

  /** Checks that one way was chosen. */
  public SwitchTiming {
    anglesDegrees = List.copyOf(anglesDegrees);
    if (randomCycles < 0 || randomCycles > MOST_CYCLES) {
      throw new IllegalArgumentException(
          "a random delay is 0 to " + MOST_CYCLES + " whole cycles, found " + randomCycles);
    }
    if (randomCycles > 0 && !anglesDegrees.isEmpty()) {
      throw new IllegalArgumentException(
          "an opening comes at a fixed angle or after a random delay, not both");
    }
    if (!anglesDegrees.stream().allMatch(angle -> angle >= 0 && angle < 360)) {
      throw new IllegalArgumentException(
          "an angle is 0 up to, not including, 360 degrees, found " + anglesDegrees);
    }
  }

  /** A random delay, even over one cycle. */
  public static SwitchTiming random(long seed) {
    return new SwitchTiming(1, List.of(), seed);
  }
}
