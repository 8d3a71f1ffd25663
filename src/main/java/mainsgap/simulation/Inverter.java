package mainsgap.simulation;

import java.util.SplittableRandom;
import mainsgap.simulation.SteppedSupply.SoftStart;

/** The output stage of a unit: what it gives once it is on the load. */
final class Inverter {
  private static final double AMPLITUDE_REACH = 0.03;
  private static final double FREQUENCY_REACH = 5e-4;
  private static final double DISTORTION = 0.015;

  /** A sine inverter follows the mains while it is there, and slips a little when it goes. */
  private static final double SINE_STEP_REACH_DEGREES = 12;

  /** One level that holds for half of the time has its peak at the peak of the sine. */
  private static final double[] QUASI_SQUARE = {45};

  private static final double[] STEPPED = {75, 40};
  private static final double SOFT_FLOOR = 0.6;
  private static final double SOFT_SECONDS = 8e-3;

  /** Far enough into a pulse that its edge is over. */
  private static final double INTO_PULSE_DEGREES = 1;

  private Inverter() {}

  /** What feeds the load from a first make at {@code makeSeconds} on. */
  static Supply startingAt(
      double makeSeconds, Supply mains, SimulatedBenchSettings settings, SplittableRandom random) {
    double hertz = hertz(settings, random);
    double rmsVolts = rmsVolts(settings, random);
    double[] steps = steps(settings.unit());
    if (steps.length == 0) {
      double degrees = mains.degreesAt(makeSeconds) + Draw.around(SINE_STEP_REACH_DEGREES, random);
      Phase phase = new Phase(hertz, makeSeconds, degrees);
      return new HarmonicSupply(phase, rmsVolts, DISTORTION, random);
    }
    // a stepped inverter begins with a pulse, of either sign
    double half = random.nextBoolean() ? 180 : 0;
    Phase phase = new Phase(hertz, makeSeconds, 90 - steps[0] + INTO_PULSE_DEGREES + half);
    return new SteppedSupply(phase, rmsVolts, steps, start(settings.unit(), makeSeconds));
  }

  /** What feeds the load until the unit goes back to the mains at {@code endSeconds}. */
  static Supply runningUntil(
      double endSeconds, Supply mains, SimulatedBenchSettings settings, SplittableRandom random) {
    double hertz = hertz(settings, random);
    double rmsVolts = rmsVolts(settings, random);
    double[] steps = steps(settings.unit());
    if (steps.length == 0) {
      double degrees = mains.degreesAt(endSeconds) + Draw.around(SINE_STEP_REACH_DEGREES, random);
      Phase phase = new Phase(hertz, endSeconds, degrees);
      return new HarmonicSupply(phase, rmsVolts, DISTORTION, random);
    }
    // it lets go within a pulse: in the zero between two pulses no one could see it go
    double degrees = 90 + Draw.around(steps[0] / 2, random);
    return new SteppedSupply(
        new Phase(hertz, endSeconds, degrees), rmsVolts, steps, SoftStart.hard());
  }

  /** How its output filter rings when the contact makes. */
  static NodeVoltage.Ring ring(SplittableRandom random) {
    return new NodeVoltage.Ring(
        random.nextDouble(0.1, 0.35),
        random.nextDouble(700, 1800),
        random.nextDouble(0.4e-3, 0.9e-3));
  }

  private static double hertz(SimulatedBenchSettings settings, SplittableRandom random) {
    return settings.mains().hertz() * (1 + Draw.around(FREQUENCY_REACH, random));
  }

  private static double rmsVolts(SimulatedBenchSettings settings, SplittableRandom random) {
    return settings.mains().volts() * (1 + Draw.around(AMPLITUDE_REACH, random));
  }

  private static SoftStart start(SimulatedUnit unit, double seconds) {
    return unit == SimulatedUnit.STANDBY_STEPPED
        ? new SoftStart(seconds, SOFT_FLOOR, SOFT_SECONDS)
        : SoftStart.hard();
  }

  private static double[] steps(SimulatedUnit unit) {
    return switch (unit) {
      case STANDBY_STEPPED -> STEPPED;
      case STANDBY_QUASI_SQUARE -> QUASI_SQUARE;
      case STANDBY, LINE_INTERACTIVE, DOUBLE_CONVERSION, NEVER_RETURNS -> new double[0];
    };
  }
}
