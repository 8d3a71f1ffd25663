package mainsgap.simulation;

import java.util.SplittableRandom;

/** Randomness by seed: one stream for each event of the bench. */
final class Draw {
  /** An odd constant that spreads neighbouring numbers over all bits. */
  private static final long SPREAD = 0xD1B54A32D192ED03L;

  private Draw() {}

  /** The stream of one event. */
  static SplittableRandom of(long seed, Occasion occasion, int number) {
    long mixed = new SplittableRandom(seed ^ (number * SPREAD)).nextLong() + occasion.stream;
    return new SplittableRandom(new SplittableRandom(mixed).nextLong());
  }

  /** Evenly between {@code -reach} and {@code reach}. */
  static double around(double reach, SplittableRandom random) {
    return reach * random.nextDouble(-1, 1);
  }

  /** What a stream is drawn for. */
  enum Occasion {
    REST(1),
    OPENING(2),
    CLOSING(3);

    private final int stream;

    Occasion(int stream) {
      this.stream = stream;
    }
  }
}
