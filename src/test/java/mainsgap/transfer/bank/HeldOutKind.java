package mainsgap.transfer.bank;

import java.util.function.Consumer;
import mainsgap.transfer.outcome.Outcome;

/**
 * Kinds that the measurement is never tuned on: two hostile things at once, and settings outside
 * the ranges of {@link Kind}.
 */
public enum HeldOutKind implements CaptureKind {
  /** The output's contact bounces twice. */
  TWO_MAKE_BOUNCES(
      rig -> {
        rig.gapSeconds = rig.dice.between(9e-3, 25e-3);
        double d = rig.dice.between(0.3e-3, 1e-3);
        double c = d + rig.dice.between(0.3e-3, 1e-3);
        double b = c + rig.dice.between(0.3e-3, 1e-3);
        rig.makeBounces = new double[] {b + rig.dice.between(0.3e-3, 1e-3), b, c, d};
      }),

  /** Contacts bounce at both ends. */
  BOUNCE_AT_BOTH_ENDS(
      rig -> {
        rig.gapSeconds = rig.dice.between(10e-3, 30e-3);
        double again = rig.dice.between(0.4e-3, 1.2e-3);
        rig.breakBounces = new double[] {again, again + rig.dice.between(0.4e-3, 1.5e-3)};
        double lastBreak = rig.dice.between(0.4e-3, 1.2e-3);
        rig.makeBounces = new double[] {lastBreak + rig.dice.between(0.4e-3, 1.5e-3), lastBreak};
      }),

  /** An output that drops out for long soon after it has come. */
  LONG_SECOND_BREAK(
      rig -> {
        rig.secondBreakAfterSeconds = rig.dice.between(1.2, 4) / rig.nominalHertz;
        rig.secondBreakSeconds = rig.dice.logBetween(30e-3, 0.2);
        rig.secondsAfter = 0.6;
      }),

  /** A long gap at whose end the output comes up slowly. */
  LONG_GAP_SOFT_START(
      rig -> {
        rig.gapSeconds = rig.dice.between(60e-3, 80e-3);
        rig.start = Rig.Start.SOFT;
        rig.startSeconds = rig.dice.between(2e-3, 15e-3);
      }),

  /** The shortest gaps, both ends near a zero crossing. */
  SHORT_GAP_NEAR_ZERO(
      rig -> {
        rig.gapSeconds = rig.dice.between(0.8e-3, 1.5e-3);
        rig.lossDegrees = rig.dice.nearZeroCrossing();
        rig.outputDegreesAtReturn = rig.dice.nearZeroCrossing();
      }),

  /** A load that keeps its voltage for a while, and an output whose start is a ramp. */
  DECAY_AND_RAMP(
      rig -> {
        rig.left = Rig.Left.DECAY;
        rig.leftDecaySeconds = rig.dice.logBetween(0.2e-3, 5e-3);
        rig.gapSeconds = rig.dice.between(15e-3, 80e-3);
        rig.start = Rig.Start.RAMP;
        rig.startSeconds = rig.dice.between(2e-3, 20e-3);
      }),

  /** Hum and a held level in the gap, mains with harmonics and an offset. */
  HUM_ON_A_HELD_LEVEL(
      rig -> {
        rig.left = Rig.Left.HELD;
        rig.leftShare = rig.dice.between(-0.2, 0.2);
        rig.pickupShare = rig.dice.between(0.005, 0.015);
        rig.mainsHarmonics = rig.dice.harmonics(0.05);
        rig.offsetShare = rig.dice.between(-0.02, 0.02);
      }),

  /** A lightning surge that dies down before mains is lost. */
  SURGE_BEFORE(
      rig -> {
        rig.cyclesBefore = rig.dice.between(7, 10);
        rig.disturbed = Rig.Disturbed.SURGE;
        rig.disturbedSeconds = rig.dice.logBetween(0.05e-3, 0.4e-3);
        rig.disturbedShare = rig.dice.pick(-1, 1) * rig.dice.between(0.15, 0.6);
        rig.disturbedBeforeSeconds = rig.dice.between(4e-3, 50e-3);
      }),

  /** A stepped output of the other frequency, noisy. */
  STEPPED_OTHER_FREQUENCY(
      rig -> {
        rig.shape = Rig.Shape.STEPPED;
        rig.outputHertz = rig.outputHertz * (110 / rig.nominalHertz - 1);
        rig.noiseShare = rig.dice.between(0.005, 0.015);
      });

  @SuppressWarnings("ImmutableEnumChecker") // the settings hold no state
  private final Consumer<Rig> settings;

  HeldOutKind(Consumer<Rig> settings) {
    this.settings = settings;
  }

  @Override
  public KnownCapture capture(long seed) {
    return Generator.capture(seed, this, settings);
  }

  @Override
  public Outcome.Kind carries() {
    return Outcome.Kind.MEASURED;
  }

  @Override
  public boolean leavesTangentially() {
    return this == DECAY_AND_RAMP;
  }
}
