package mainsgap.simulation;

/**
 * White noise of unit standard deviation as a pure function of a seed and a sample's index, so that
 * a record is the same in whatever order it is read. Close to normal: the sum of eight even draws.
 */
final class Noise {
  private static final long GOLDEN = 0x9E3779B97F4A7C15L;

  /** Standard deviation of the sum of eight draws that are even over 65536 steps. */
  private static final double SUM_DEVIATION = 65536 * Math.sqrt(8 / 12.0);

  private static final double SUM_MEAN = 8 * 65535 / 2.0;

  private Noise() {}

  /** The noise of sample {@code index}. */
  static double at(long seed, long index) {
    long first = mixed(seed + index * GOLDEN);
    long second = mixed(first ^ seed);
    return (sumOfQuarters(first) + sumOfQuarters(second) - SUM_MEAN) / SUM_DEVIATION;
  }

  private static long sumOfQuarters(long bits) {
    return (bits & 0xFFFF)
        + ((bits >>> 16) & 0xFFFF)
        + ((bits >>> 32) & 0xFFFF)
        + ((bits >>> 48) & 0xFFFF);
  }

  /**
   * The finaliser that java.util.SplittableRandom documents as its source (MurmurHash3 variant).
   */
  private static long mixed(long bits) {
    long z = (bits ^ (bits >>> 30)) * 0xBF58476D1CE4E5B9L;
    z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
    return z ^ (z >>> 31);
  }
}
