package mainsgap.simulation;

import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;

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
    return drawn(nominal, null, random);
  }

  /** The same at {@code fixedDegrees}, where they are not null, at 0 s. */
  static Supply drawn(
      SimulatedBenchSettings.Mains nominal,
      @Nullable Double fixedDegrees,
      SplittableRandom random) {
    double hertz = nominal.hertz() * (1 + Draw.around(FREQUENCY_REACH, random));
    double drawnDegrees = random.nextDouble(360);
    double degrees = fixedDegrees == null ? drawnDegrees : fixedDegrees;
    double rmsVolts = nominal.volts() * (1 + Draw.around(AMPLITUDE_REACH, random));
    return new HarmonicSupply(new Phase(hertz, 0, degrees), rmsVolts, DISTORTION, random);
  }

  /** What an open wire near {@code mains} carries. */
  static Voltage pickupOf(Supply mains) {
    return seconds -> PICKUP_SHARE * mains.voltsAt(seconds);
  }
}
