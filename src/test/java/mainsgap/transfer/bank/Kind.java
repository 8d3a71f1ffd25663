package mainsgap.transfer.bank;

import java.util.function.Consumer;

/** The kinds of capture in the bank, each hostile in its own way. */
public enum Kind {
  FREE_RUNNING(rig -> {}),
  ZERO_CROSSING(
      rig -> {
        rig.lossDegrees = rig.nearZeroCrossing();
        rig.outputDegreesAtReturn = rig.nearZeroCrossing();
      }),
  SHORT_GAP(rig -> rig.gapSeconds = rig.between(0.8e-3, 3e-3)),
  MAKE_BOUNCE(
      rig -> {
        rig.gapSeconds = rig.between(6e-3, 20e-3);
        double b = rig.between(0.3e-3, 1.5e-3);
        double a = b + rig.between(0.3e-3, 2e-3);
        rig.makeBounces = new double[] {a, b};
      }),
  BREAK_BOUNCE(
      rig -> {
        rig.gapSeconds = rig.between(8e-3, 30e-3);
        double a = rig.between(0.3e-3, 1.5e-3);
        rig.breakBounces = new double[] {a, a + rig.between(0.3e-3, 2e-3)};
      }),
  RINGING(
      rig -> {
        rig.ringShare = rig.between(0.1, 0.6);
        rig.ringHertz = rig.between(400, 3500);
        rig.ringDecaySeconds = rig.between(0.3e-3, 2e-3);
      }),
  SOFT_START(
      rig -> {
        rig.start = Rig.Start.SOFT;
        rig.startSeconds = rig.between(1e-3, 25e-3);
      }),
  RAMPED(
      rig -> {
        rig.start = Rig.Start.RAMP;
        rig.startSeconds = rig.between(2e-3, 50e-3);
      }),
  DECAYING_RESIDUE(
      rig -> {
        rig.residue = Rig.ResidueKind.DECAY;
        rig.residueDecaySeconds = Math.exp(rig.between(Math.log(0.1e-3), Math.log(20e-3)));
      }),
  HELD_LEVEL(
      rig -> {
        rig.residue = Rig.ResidueKind.HELD;
        rig.residueShare = rig.between(-0.4, 0.4);
      }),
  MOTOR(
      rig -> {
        rig.residue = Rig.ResidueKind.MOTOR;
        rig.residueShare = rig.between(0.5, 0.85);
        rig.residueHertz = rig.mainsHertz * rig.between(0.8, 0.97);
        rig.residueDecaySeconds = rig.between(10e-3, 80e-3);
      }),
  STEPPED(rig -> rig.output = Rig.Output.STEPPED),
  QUASI_SQUARE(rig -> rig.output = Rig.Output.QUASI_SQUARE),
  LOW_PASS(rig -> rig.lowPassSeconds = rig.between(5e-6, 100e-6)),
  RIPPLE(
      rig -> {
        rig.rippleShare = rig.between(0.005, 0.03);
        rig.rippleHertz = rig.between(15e3, 45e3);
      }),
  NOISY(rig -> rig.noiseShare = rig.between(0.01, 0.03)),
  COARSE(rig -> rig.sampleRateHertz = rig.between(10e3, 20e3)),
  FAST(
      rig -> {
        rig.sampleRateHertz = rig.pick(1e6, 2e6);
        rig.gapSeconds = Math.min(rig.gapSeconds, 30e-3);
      }),
  HARMONICS(rig -> rig.mainsHarmonics = rig.harmonics(0.05)),
  FREQUENCY_OFF(
      rig -> {
        rig.mainsHertz = rig.nominalHertz * (1 + rig.between(-0.01, 0.01));
        rig.outputHertz = rig.nominalHertz * (1 + rig.between(-0.01, 0.01));
      }),
  OFFSET_AND_DRIFT(
      rig -> {
        rig.offsetShare = rig.between(-0.03, 0.03);
        rig.driftSharePerSecond = rig.between(-0.1, 0.1);
      });

  @SuppressWarnings("ImmutableEnumChecker") // the settings hold no state
  private final Consumer<Rig> settings;

  Kind(Consumer<Rig> settings) {
    this.settings = settings;
  }

  /** The capture of {@code seed}; the same each time. */
  public KnownCapture capture(long seed) {
    Rig rig = new Rig(seed * 7919 + name().hashCode());
    settings.accept(rig);
    return Generator.capture(rig);
  }
}
