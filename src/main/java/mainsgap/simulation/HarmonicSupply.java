package mainsgap.simulation;

import java.util.SplittableRandom;

/** A sine with a few odd harmonics. Immutable. */
final class HarmonicSupply implements Supply {
  private static final int[] ORDERS = {3, 5, 7};

  /** How the harmonics of a common supply compare: the fifth is the largest. */
  private static final double[] SHARES = {0.5, 1, 0.45};

  private final Phase phase;
  private final double peakVolts;
  private final double[] sines = new double[ORDERS.length];
  private final double[] cosines = new double[ORDERS.length];

  /**
   * A supply whose harmonics stand at random phases.
   *
   * @param rmsVolts of the fundamental
   * @param distortion the fifth harmonic as a fraction of the fundamental
   */
  HarmonicSupply(Phase phase, double rmsVolts, double distortion, SplittableRandom random) {
    this.phase = phase;
    this.peakVolts = rmsVolts * Math.sqrt(2);
    for (int i = 0; i < ORDERS.length; i++) {
      double amplitude = peakVolts * distortion * SHARES[i];
      double radians = random.nextDouble(2 * Math.PI);
      sines[i] = amplitude * Math.cos(radians);
      cosines[i] = amplitude * Math.sin(radians);
    }
  }

  private HarmonicSupply(Phase phase, HarmonicSupply like) {
    this.phase = phase;
    this.peakVolts = like.peakVolts;
    System.arraycopy(like.sines, 0, sines, 0, sines.length);
    System.arraycopy(like.cosines, 0, cosines, 0, cosines.length);
  }

  /** The same wave at another frequency, unbroken at {@code seconds}. */
  HarmonicSupply turnedTo(double hertz, double seconds) {
    return new HarmonicSupply(new Phase(hertz, seconds, phase.degreesAt(seconds)), this);
  }

  @Override
  public double voltsAt(double seconds) {
    double radians = phase.radiansAt(seconds);
    double sine = Math.sin(radians);
    double cosine = Math.cos(radians);
    double volts = peakVolts * sine;
    // sin(k+2)x = 2 cos 2x sin kx - sin(k-2)x, the same for cosines: two calls for all orders
    double twiceCosineOfDouble = 2 * (cosine * cosine - sine * sine);
    double lowerSine = -sine;
    double lowerCosine = cosine;
    for (int i = 0; i < ORDERS.length; i++) {
      double nextSine = twiceCosineOfDouble * sine - lowerSine;
      double nextCosine = twiceCosineOfDouble * cosine - lowerCosine;
      lowerSine = sine;
      lowerCosine = cosine;
      sine = nextSine;
      cosine = nextCosine;
      volts += sines[i] * sine + cosines[i] * cosine;
    }
    return volts;
  }

  @Override
  public double degreesAt(double seconds) {
    return phase.degreesAt(seconds);
  }

  @Override
  public double hertz() {
    return phase.hertz();
  }
}
