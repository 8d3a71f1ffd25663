package mainsgap.transfer.bank;

import java.util.SplittableRandom;

/** Draws from a seed: the same seed gives the same draws. Not thread-safe. */
final class Dice {
  private static final int HIGHEST_ORDER = 13;

  private final SplittableRandom random;

  Dice(long seed) {
    this(new SplittableRandom(seed));
  }

  private Dice(SplittableRandom random) {
    this.random = random;
  }

  /** Dice of their own, so that what follows does not depend on how often these are thrown. */
  Dice split() {
    return new Dice(random.split());
  }

  double share() {
    return random.nextDouble();
  }

  boolean coin() {
    return random.nextBoolean();
  }

  boolean oneIn(int times) {
    return random.nextInt(times) == 0;
  }

  double between(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  /** Even over the decades between the two. */
  double logBetween(double low, double high) {
    return Math.exp(between(Math.log(low), Math.log(high)));
  }

  double pick(double... values) {
    return values[random.nextInt(values.length)];
  }

  /** An angle within 3 degrees of a zero crossing: there arcs end, and there edges are hardest. */
  double nearZeroCrossing() {
    return (random.nextBoolean() ? 180 : 360) + between(-3, 3);
  }

  /**
   * An angle at the top or the bottom of a quasi-square output, not within a degree of its ends:
   * there a make is told from the output's own step by two samples of a slow scope at most.
   */
  double onAPlateau() {
    return pick(90, 270) + between(-44, 44);
  }

  /** Odd harmonics as shares of the fundamental, from order 2, each up to {@code most / sqrt}. */
  double[] harmonics(double most) {
    double[] shares = new double[HIGHEST_ORDER - 1];
    for (int order = 3; order <= HIGHEST_ORDER; order += 2) {
      shares[order - 2] = between(0, most) / Math.sqrt(order - 2);
    }
    return shares;
  }

  /** A normal deviate (Box and Muller). */
  double gaussian() {
    double u = 1 - random.nextDouble();
    return Math.sqrt(-2 * Math.log(u)) * Math.cos(2 * Math.PI * random.nextDouble());
  }
}
