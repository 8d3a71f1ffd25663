package mainsgap.statistics;

/** Checks that arguments are what they say. */
final class Probability {
  private Probability() {}

  /** Refuses what is not strictly between 0 and 1, NaN among it. */
  static void check(String name, double value) {
    if (!(value > 0 && value < 1)) {
      throw new IllegalArgumentException(name + " lies between 0 and 1, found " + value);
    }
  }
}
