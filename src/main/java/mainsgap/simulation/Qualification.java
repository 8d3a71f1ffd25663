package mainsgap.simulation;

import java.util.SplittableRandom;

/** How long the simulated units watch a mains that is back before they trust it: about a second. */
final class Qualification {
  private Qualification() {}

  static double drawn(SplittableRandom random) {
    return random.nextDouble(0.8, 1.2);
  }

  /** Early in the record, so that what follows the qualification is still in it. */
  static double placeInForcedRecord(SplittableRandom random) {
    return random.nextDouble(0.1, 0.2);
  }
}
