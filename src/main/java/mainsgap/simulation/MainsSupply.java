package mainsgap.simulation;

import java.util.SplittableRandom;

/** The mains of the bench as it stands at one event. */
final class MainsSupply {
  private static final double AMPLITUDE_REACH = 0.03;
  private static final double FREQUENCY_REACH = 3e-4;
  private static final double DISTORTION = 0.02;

  /** What a floating wire picks up of the mains beside it. */
  private static final double PICKUP_SHARE = 0.002;

  private MainsSupply() {}

  /** A supply near nominal, at an angle of its own at 0 s. */
  static Supply drawn(SimulatedBenchSettings.Mains nominal, SplittableRandom random) {
    double hertz = nominal.hertz() * (1 + Draw.around(FREQUENCY_REACH, random));
    double degrees = random.nextDouble(360);
    double rmsVolts = nominal.volts() * (1 + Draw.around(AMPLITUDE_REACH, random));
    return new HarmonicSupply(new Phase(hertz, 0, degrees), rmsVolts, DISTORTION, random);
  }

  /** What an open wire near {@code mains} carries. */
  static Voltage pickupOf(Supply mains) {
    return seconds -> PICKUP_SHARE * mains.voltsAt(seconds);
  }
}
