package mainsgap.transfer.bank;

import java.util.function.Consumer;
import mainsgap.transfer.outcome.Outcome;

/** The kinds of capture that the measurement is tuned on. What each changes is hostile in it. */
public enum Kind implements CaptureKind {
  /**
   * The ordinary bench alone: any point on wave, gaps of 0.8 to 80 ms, an inverter in any phase.
   */
  FREE_RUNNING(rig -> {}),

  /** Both ends within 3 degrees of a zero crossing, where the voltage hardly tells a gap. */
  ZERO_CROSSING(
      rig -> {
        rig.lossDegrees = rig.dice.nearZeroCrossing();
        rig.outputDegreesAtReturn = rig.dice.nearZeroCrossing();
      }),

  /** Shorter than the dwell of a sine under a level of a few tens of per cent. */
  SHORT_GAP(rig -> rig.gapSeconds = rig.dice.between(0.8e-3, 3e-3)),

  /** The output's contact makes and breaks once before it holds. */
  MAKE_BOUNCE(
      rig -> {
        rig.gapSeconds = rig.dice.between(6e-3, 20e-3);
        double lastBreak = rig.dice.between(0.3e-3, 1.5e-3);
        rig.makeBounces = new double[] {lastBreak + rig.dice.between(0.3e-3, 2e-3), lastBreak};
      }),

  /** The mains contact makes once more: the first opening counts. */
  BREAK_BOUNCE(
      rig -> {
        rig.gapSeconds = rig.dice.between(8e-3, 30e-3);
        double again = rig.dice.between(0.3e-3, 1.5e-3);
        rig.breakBounces = new double[] {again, again + rig.dice.between(0.3e-3, 2e-3)};
      }),

  /** A break later than one cycle after the return is an interruption of its own, no bounce. */
  SECOND_INTERRUPTION(
      rig -> {
        rig.secondBreakAfterSeconds = rig.dice.between(1.2, 5) / rig.nominalHertz;
        rig.secondBreakSeconds = rig.dice.between(2e-3, 15e-3);
        rig.secondsAfter = 0.4;
      }),

  /** A pulse, a notch or a burst on healthy mains, shortly before it is lost. */
  DISTURBED_BEFORE(
      rig -> {
        rig.cyclesBefore = rig.dice.between(6, 9);
        rig.disturbedBeforeSeconds = rig.dice.logBetween(2e-3, 40e-3);
        rig.disturbedSeconds = rig.dice.logBetween(50e-6, 0.5e-3);
        rig.disturbedShare = rig.dice.pick(-1, 1) * rig.dice.between(0.15, 0.9);
        rig.disturbed = Rig.Disturbed.PULSE;
        if (rig.dice.oneIn(3)) {
          rig.disturbedSeconds = rig.dice.between(0.1e-3, 0.35e-3);
          rig.disturbedShare = rig.dice.between(0.55, 0.8);
          rig.disturbed = Rig.Disturbed.NOTCH;
        } else if (rig.dice.oneIn(3)) {
          rig.disturbedSeconds = 1e-3;
          rig.disturbedShare = rig.dice.between(0.1, 0.3);
          rig.disturbed = Rig.Disturbed.BURST;
        }
      }),

  /** Mains sags before it is lost, up to the loss or some time before it. */
  SAG_BEFORE(
      rig -> {
        rig.cyclesBefore = rig.dice.between(7, 10);
        rig.disturbed = Rig.Disturbed.SAG;
        rig.disturbedSeconds = rig.dice.between(0.6, 1.5) / rig.nominalHertz;
        rig.disturbedShare = rig.dice.between(0.4, 0.85);
        double healthy = rig.dice.coin() ? 0 : rig.dice.between(3e-3, 30e-3);
        rig.disturbedBeforeSeconds = rig.disturbedSeconds + healthy;
      }),

  /** A capacitor bank is switched in before mains is lost: it rings for some milliseconds. */
  RING_BEFORE(
      rig -> {
        rig.cyclesBefore = rig.dice.between(7, 10);
        rig.disturbed = Rig.Disturbed.RING;
        rig.disturbedSeconds = rig.dice.between(0.3e-3, 1.5e-3);
        rig.disturbedShare = rig.dice.between(0.15, 0.6);
        rig.disturbedBeforeSeconds = rig.dice.between(12e-3, 60e-3);
      }),

  /** The filter's capacitor rings with the line at the return, up to 60 %. */
  RINGING(
      rig -> {
        rig.ringShare = rig.dice.between(0.1, 0.6);
        rig.ringHertz = rig.dice.between(400, 3500);
        rig.ringDecaySeconds = rig.dice.between(0.3e-3, 2e-3);
      }),

  /** The amplitude comes up exponentially, so that the return has a kink and no step. */
  SOFT_START(
      rig -> {
        rig.start = Rig.Start.SOFT;
        rig.startSeconds = rig.dice.between(1e-3, 25e-3);
      }),

  /** The amplitude comes up linearly. */
  RAMPED(
      rig -> {
        rig.start = Rig.Start.RAMP;
        rig.startSeconds = rig.dice.between(2e-3, 50e-3);
      }),

  /** The output comes back at a fixed jump from mains, the small ones nearly in its old phase. */
  PHASE_JUMP(
      rig -> {
        double mainsAtReturn = rig.lossDegrees + 360 * rig.mainsHertz * rig.gapSeconds;
        rig.outputDegreesAtReturn = mainsAtReturn + rig.dice.pick(-180, -90, -30, -5, 5, 30, 90);
      }),

  /**
   * A capacitive load holds the voltage of the loss and lets it decay: at a crest, tangentially.
   */
  DECAYING_RESIDUE(
      rig -> {
        rig.left = Rig.Left.DECAY;
        rig.leftDecaySeconds = rig.dice.logBetween(0.1e-3, 20e-3);
      }),

  /** A rectifier's capacitor or a floating output leaves a level on the load. */
  HELD_LEVEL(
      rig -> {
        rig.left = Rig.Left.HELD;
        rig.leftShare = rig.dice.between(-0.4, 0.4);
      }),

  /** A motor runs on as a generator, slower and slower: its voltage starts in phase with mains. */
  MOTOR(
      rig -> {
        rig.left = Rig.Left.MOTOR;
        rig.leftShare = rig.dice.between(0.5, 0.85);
        rig.leftHertz = rig.mainsHertz * rig.dice.between(0.8, 0.97);
        rig.leftDecaySeconds = rig.dice.between(10e-3, 80e-3);
      }),

  /** The contact arcs: 10 to 20 V are lost at its opening, the rest at the next current zero. */
  ARC(
      rig -> {
        double degrees = rig.dice.between(3, 90);
        rig.lossDegrees = rig.dice.pick(180, 360) - degrees;
        rig.arcVolts = rig.dice.between(10, 20);
        rig.arcSeconds = degrees / 360 / rig.mainsHertz;
        rig.gapSeconds = rig.dice.logBetween(7e-3, 80e-3);
      }),

  /** Three levels a half cycle: steps that are no bounce, a crossing that rests. */
  STEPPED(rig -> rig.shape = Rig.Shape.STEPPED),

  /** At rest for half of the time, and back while it is not. */
  QUASI_SQUARE(
      rig -> {
        rig.shape = Rig.Shape.QUASI_SQUARE;
        rig.outputDegreesAtReturn = rig.dice.onAPlateau();
      }),

  /** The same, back within a rest: it can't be located better than that. */
  QUASI_SQUARE_REST(
      rig -> {
        rig.shape = Rig.Shape.QUASI_SQUARE;
        rig.outputDegreesAtReturn = rig.dice.pick(0, 180) + rig.dice.between(-45, 45);
      }),

  /** A slow probe rounds both edges, up to a corner frequency of 1.6 kHz. */
  LOW_PASS(rig -> rig.lowPassSeconds = rig.dice.between(5e-6, 100e-6)),

  /** The inverter's switching shows, often above half the sample rate. */
  RIPPLE(
      rig -> {
        rig.rippleShare = rig.dice.between(0.005, 0.03);
        rig.rippleHertz = rig.dice.between(15e3, 45e3);
      }),

  /** Switching ripple at a rate that folds it down among the harmonics. */
  RIPPLE_ALIASED(
      rig -> {
        rig.rippleShare = rig.dice.between(0.005, 0.03);
        rig.rippleHertz = rig.dice.between(15e3, 45e3);
        rig.sampleRateHertz = rig.dice.between(10e3, 25e3);
      }),

  /** Noise of 1 to 3 % of peak. */
  NOISY(rig -> rig.noiseShare = rig.dice.between(0.01, 0.03)),

  /** A sample each 50 to 100 µs. */
  COARSE(rig -> rig.sampleRateHertz = rig.dice.between(10e3, 20e3)),

  /** So many samples that a fit of every one would take long. */
  FAST(
      rig -> {
        rig.sampleRateHertz = rig.dice.pick(1e6, 2e6);
        rig.gapSeconds = Math.min(rig.gapSeconds, 30e-3);
      }),

  /** Mains with odd harmonics up to 5 %. */
  HARMONICS(rig -> rig.mainsHarmonics = rig.dice.harmonics(0.05)),

  /** Mains and output each off by up to 1 %. */
  FREQUENCY_OFF(
      rig -> {
        rig.mainsHertz = rig.nominalHertz * (1 + rig.dice.between(-0.01, 0.01));
        rig.outputHertz = rig.nominalHertz * (1 + rig.dice.between(-0.01, 0.01));
      }),

  /** An inverter of the other frequency: a finding, no reason to refuse. */
  OTHER_FREQUENCY(rig -> rig.outputHertz = rig.outputHertz * (110 / rig.nominalHertz - 1)),

  /** An offset and a slow drift that the fit of a long stretch must follow. */
  OFFSET_AND_DRIFT(
      rig -> {
        rig.offsetShare = rig.dice.between(-0.03, 0.03);
        rig.driftSharePerSecond = rig.dice.between(-0.1, 0.1);
      }),

  /** An open load picks up mains hum, which goes on in the gap. */
  PICKUP(rig -> rig.pickupShare = rig.dice.between(0.005, 0.03)),

  /** A capacitor across the open switch lets through a share of mains. */
  COUPLED(
      rig -> {
        rig.left = Rig.Left.COUPLED;
        rig.leftShare = rig.dice.between(0.05, 0.33);
        rig.leftDegrees = rig.dice.between(0, 80);
        rig.gapSeconds = rig.dice.logBetween(12e-3, 200e-3);
      }),

  /** An inverter that starts off mains and walks to its frequency. */
  WALKING_FREQUENCY(
      rig -> {
        rig.outputHertz = rig.mainsHertz + rig.dice.pick(-1, 1) * rig.dice.between(0.2, 1);
        rig.walkHertzPerSecond = rig.dice.logBetween(0.2, 2);
        rig.secondsAfter = 0.5;
      }),

  /** The output's contact bounces, and the load keeps some of its voltage while it is open. */
  DISCHARGING_BOUNCE(
      rig -> {
        rig.gapSeconds = rig.dice.between(6e-3, 20e-3);
        double lastBreak = rig.dice.between(0.3e-3, 1.5e-3);
        rig.makeBounces = new double[] {lastBreak + rig.dice.between(0.3e-3, 2e-3), lastBreak};
        rig.dischargeSeconds = rig.dice.logBetween(30e-6, 0.5e-3);
      }),

  /** A load whose rectifier commutates: a notch in each half cycle, on mains as on the output. */
  NOTCHED(
      rig -> {
        rig.gapSeconds = rig.dice.between(3e-3, 40e-3);
        rig.notchSeconds = rig.dice.logBetween(50e-6, 0.2e-3);
        rig.notchDegrees = rig.dice.between(0, 180);
        rig.notchShare = rig.dice.between(0.6, 0.9);
      }),

  /** Mains whose voltage or angle steps some cycles before it is lost. */
  STEPPING_MAINS(
      rig -> {
        rig.cyclesBefore = rig.dice.between(9, 12);
        rig.stepBeforeSeconds = rig.dice.logBetween(2, 6) / rig.nominalHertz;
        if (rig.dice.coin()) {
          rig.stepShare = 1 + rig.dice.pick(-1, 1) * rig.dice.between(0.02, 0.1);
        } else {
          rig.stepDegrees = rig.dice.pick(-1, 1) * rig.dice.between(2, 20);
        }
      }),

  /** Mains whose voltage or angle steps less than a cycle or so before it is lost. */
  STEP_JUST_BEFORE(
      rig -> {
        rig.cyclesBefore = rig.dice.between(7, 10);
        rig.gapSeconds = rig.dice.logBetween(2e-3, 80e-3);
        rig.stepBeforeSeconds = rig.dice.between(0.25, 1.2) / rig.nominalHertz;
        Step step = Step.drawn(rig.dice);
        rig.stepShare = step.share();
        rig.stepDegrees = step.degrees();
      }),

  /** A surge less than a cycle or so before the loss. */
  SURGE_JUST_BEFORE(
      rig -> {
        rig.cyclesBefore = rig.dice.between(7, 10);
        rig.gapSeconds = rig.dice.logBetween(2e-3, 80e-3);
        rig.disturbed = Rig.Disturbed.SURGE;
        rig.disturbedSeconds = rig.dice.logBetween(0.05e-3, 0.4e-3);
        rig.disturbedShare = rig.dice.pick(-1, 1) * rig.dice.between(0.3, 1);
        rig.disturbedBeforeSeconds = rig.dice.between(0.25, 1.2) / rig.nominalHertz;
      }),

  /** An output whose voltage or angle steps within its first cycle. */
  OUTPUT_STEPS_SOON(
      rig -> {
        rig.gapSeconds = rig.dice.logBetween(2e-3, 80e-3);
        rig.outputStepAfterSeconds = rig.dice.between(0.25, 1) / rig.nominalHertz;
        Step step = Step.drawn(rig.dice);
        rig.outputStepShare = step.share();
        rig.outputStepDegrees = step.degrees();
      }),

  /** Mains that steps shortly before its loss, and an output that steps soon after its return. */
  STEPS_AT_BOTH_ENDS(
      rig -> {
        rig.cyclesBefore = rig.dice.between(7, 10);
        rig.gapSeconds = rig.dice.logBetween(3e-3, 60e-3);
        rig.stepBeforeSeconds = rig.dice.between(0.3, 2) / rig.nominalHertz;
        rig.stepShare = 1 + rig.dice.pick(-1, 1) * rig.dice.between(0.03, 0.15);
        rig.stepDegrees = rig.dice.pick(-1, 1) * rig.dice.between(3, 20);
        rig.outputStepAfterSeconds = rig.dice.between(0.3, 2) / rig.nominalHertz;
        rig.outputStepShare = 1 + rig.dice.pick(-1, 1) * rig.dice.between(0.03, 0.15);
        rig.outputStepDegrees = rig.dice.pick(-1, 1) * rig.dice.between(3, 20);
      }),

  /** A slow probe before a ringing output. */
  LOW_PASS_AND_RING(
      rig -> {
        rig.lowPassSeconds = rig.dice.between(5e-6, 60e-6);
        rig.ringShare = rig.dice.between(0.1, 0.5);
        rig.ringHertz = rig.dice.between(500, 3000);
        rig.ringDegrees = rig.dice.between(-45, 45);
        rig.ringDecaySeconds = rig.dice.between(0.3e-3, 1.5e-3);
      }),

  /** The output never comes: a result. */
  NO_RETURN(
      Outcome.Kind.NO_RETURN,
      rig -> {
        rig.returns = false;
        rig.gapSeconds = rig.dice.between(0.1, 0.4);
        rig.secondsAfter = 0;
      }),

  /** Double conversion: no gap, and only the frequency tells that the inverter let go of mains. */
  CONVERTED(
      Outcome.Kind.NO_INTERRUPTION,
      rig -> {
        unbroken(rig);
        rig.outputHertz = rig.mainsHertz + rig.dice.pick(-1, 1) * rig.dice.between(0.2, 1);
      }),

  /** Double conversion whose output never changes: the mains channel is the proof. */
  CONVERTED_MAINS_WATCHED(
      Outcome.Kind.NO_INTERRUPTION,
      rig -> {
        unbroken(rig);
        rig.outputNeverLeaves = true;
        rig.watchesMains = true;
      }),

  /** The same without the mains channel can't be told from a missed trigger. */
  NOTHING_HAPPENS(
      Outcome.Kind.REFUSED,
      rig -> {
        unbroken(rig);
        rig.outputNeverLeaves = true;
      }),

  /** The range cuts the crests. */
  CLIPPED(Outcome.Kind.REFUSED, rig -> rig.rangeShare = rig.dice.between(0.7, 0.9)),

  /** Under two cycles of the supply before. */
  TOO_FEW_CYCLES(Outcome.Kind.REFUSED, rig -> rig.cyclesBefore = rig.dice.between(0.3, 1.8)),

  /** A probe factor of 10 in the wrong place, or the other continent's voltage. */
  WRONG_VOLTAGE(
      Outcome.Kind.REFUSED,
      rig -> rig.askedVolts = rig.nominalVolts * rig.dice.pick(0.1, 0.5, 2, 10)),

  /** 60 Hz asked of 50 Hz mains, or the other way round. */
  WRONG_FREQUENCY(Outcome.Kind.REFUSED, rig -> rig.askedHertz = 110 - rig.nominalHertz),

  /** Under 40 samples a cycle. */
  TOO_COARSE(Outcome.Kind.REFUSED, rig -> rig.sampleRateHertz = rig.dice.between(0.6e3, 1.9e3));

  private final Outcome.Kind carries;

  @SuppressWarnings("ImmutableEnumChecker") // the settings hold no state
  private final Consumer<Rig> settings;

  Kind(Consumer<Rig> settings) {
    this(Outcome.Kind.MEASURED, settings);
  }

  Kind(Outcome.Kind carries, Consumer<Rig> settings) {
    this.carries = carries;
    this.settings = settings;
  }

  /** One inverter before and after, with no step at the loss. */
  private static void unbroken(Rig rig) {
    rig.gapSeconds = 0;
    rig.cyclesBefore = rig.dice.between(9, 12);
    rig.mainsHarmonics = new double[0];
    rig.outputHertz = rig.mainsHertz;
    rig.outputDegreesAtReturn = rig.lossDegrees;
    rig.outputShare = 1;
  }

  /** A step of a supply's voltage, or of its angle. */
  private record Step(double share, double degrees) {
    static Step drawn(Dice dice) {
      boolean isOfVoltage = dice.coin();
      double side = dice.pick(-1, 1);
      return isOfVoltage
          ? new Step(1 + side * dice.between(0.05, 0.2), 0)
          : new Step(1, side * dice.between(5, 30));
    }
  }

  @Override
  public KnownCapture capture(long seed) {
    return Generator.capture(seed, this, settings);
  }

  @Override
  public Outcome.Kind carries() {
    return carries;
  }

  @Override
  public boolean leavesTangentially() {
    return this == DECAYING_RESIDUE || this == MOTOR;
  }

  @Override
  public boolean returnsWithinARest() {
    return this == QUASI_SQUARE_REST;
  }
}
