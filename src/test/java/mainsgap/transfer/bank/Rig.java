package mainsgap.transfer.bank;

/**
 * The settings of one generated capture: first drawn from a seed in the ranges of an ordinary
 * bench, then open to its kind, which makes one thing hostile. Shares are of nominal peak where
 * nothing else is said.
 */
final class Rig {
  /** What shape the output's cycle has. */
  enum Shape {
    SINE,
    STEPPED,
    QUASI_SQUARE
  }

  /** How the output's amplitude comes up at the return. */
  enum Start {
    AT_ONCE,
    SOFT,
    RAMP
  }

  /** What is left on the load while nothing feeds it. */
  enum Left {
    NOTHING,
    DECAY,
    HELD,
    MOTOR,
    COUPLED
  }

  /** What the supply before carries some time before the loss. */
  enum Disturbed {
    NOT,
    PULSE,
    NOTCH,
    BURST,
    RING,
    SURGE,
    SAG
  }

  final Dice dice;

  // the task
  double nominalVolts;
  double nominalHertz;
  double askedVolts;
  double askedHertz;

  // the instrument
  double sampleRateHertz;
  int bits;
  double rangeShare = 1.6;
  double noiseShare;
  double offsetShare;
  double driftSharePerSecond;
  double pickupShare;
  double lowPassSeconds;
  boolean watchesMains;

  // mains
  double mainsHertz;
  double cyclesBefore;
  double lossDegrees;

  /** So long before the loss mains steps to what it then is; 0 where it does not. */
  double stepBeforeSeconds;

  /** What it was before that step, beside what it is then. */
  double stepShare = 1;

  double stepDegrees;

  /** Amplitudes as shares of the fundamental, from order 2. */
  double[] mainsHarmonics;

  // a disturbance before the loss
  Disturbed disturbed = Disturbed.NOT;
  double disturbedBeforeSeconds;

  /** How long it lasts; a ring and a surge die down in it. */
  double disturbedSeconds;

  /**
   * The height of a pulse, a burst, a ring or a surge; what is left of the voltage in a notch or a
   * sag.
   */
  double disturbedShare;

  // a load that cuts notches into each half cycle of what feeds it

  double notchSeconds;
  double notchDegrees;

  /** What is left of the voltage in them. */
  double notchShare;

  // between loss and return
  double gapSeconds;
  Left left = Left.NOTHING;
  double leftShare;
  double leftHertz;
  double leftDegrees;
  double leftDecaySeconds;
  double arcVolts;
  double arcSeconds;

  /** Seconds after the loss at which the mains contact makes and breaks again, in turn. */
  double[] breakBounces = {};

  /** Seconds before the return at which the output contact makes and breaks, longest first. */
  double[] makeBounces = {};

  /** Time constant with which the load discharges between these makes; 0 where it does at once. */
  double dischargeSeconds;

  // the output
  boolean returns = true;
  boolean outputNeverLeaves;
  double secondsAfter = 0.3;
  Shape shape = Shape.SINE;
  double outputHertz;

  /** How fast its frequency moves from the return on, up to that of mains; 0 where it does not. */
  double walkHertzPerSecond;

  double outputShare;

  /** So long after the return it steps; 0 where it does not. */
  double outputStepAfterSeconds;

  /** What it is from then on, beside what it was. */
  double outputStepShare = 1;

  double outputStepDegrees;
  double outputDegreesAtReturn;
  Start start = Start.AT_ONCE;
  double startSeconds;
  double ringShare;
  double ringHertz;
  double ringDegrees;
  double ringDecaySeconds;
  double rippleShare;
  double rippleHertz;
  double secondBreakSeconds;
  double secondBreakAfterSeconds;

  Rig(long seed) {
    dice = new Dice(seed);
    boolean sixty = dice.coin();
    nominalHertz = sixty ? 60 : 50;
    nominalVolts = sixty ? 120 : 230;
    askedHertz = nominalHertz;
    askedVolts = nominalVolts;
    mainsHertz = nominalHertz * (1 + dice.between(-0.0005, 0.0005));
    outputHertz = nominalHertz * (1 + dice.between(-0.003, 0.003));
    sampleRateHertz = dice.pick(20e3, 50e3, 100e3, 200e3, 500e3);
    bits = (int) dice.pick(8, 8, 10, 12);
    noiseShare = dice.pick(0.001, 0.002, 0.005, 0.01);
    cyclesBefore = dice.between(3, 7);
    lossDegrees = dice.oneIn(3) ? dice.nearZeroCrossing() : dice.between(0, 360);
    gapSeconds = dice.logBetween(0.8e-3, 80e-3);
    outputDegreesAtReturn = dice.oneIn(4) ? dice.nearZeroCrossing() : dice.between(0, 360);
    outputShare = dice.between(0.95, 1.05);
    mainsHarmonics = dice.harmonics(0.03);
    offsetShare = dice.between(-0.005, 0.005);
  }

  double peakVolts() {
    return nominalVolts * Math.sqrt(2);
  }

  double lossSeconds() {
    return cyclesBefore / nominalHertz;
  }

  /** Infinite where the output never comes. */
  double returnSeconds() {
    return returns ? lossSeconds() + gapSeconds : Double.POSITIVE_INFINITY;
  }

  double endSeconds() {
    return lossSeconds() + gapSeconds + secondsAfter;
  }

  double intervalSeconds() {
    return 1 / sampleRateHertz;
  }

  /** The step of the converter. */
  double voltsPerCode() {
    return 2 * rangeShare * peakVolts() / (1 << bits);
  }
}
