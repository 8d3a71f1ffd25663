package mainsgap.transfer.bank;

import java.util.SplittableRandom;

/** The settings of one generated capture, open to its kind; drawn from a seed. */
final class Rig {
  final SplittableRandom random;

  double nominalVolts = 230;
  double nominalHertz = 50;
  double mainsHertz;
  double sampleRateHertz = 100e3;
  int bits = 8;
  double noiseShare = 0.005;
  double offsetShare = 0;
  double driftSharePerSecond = 0;
  double lowPassSeconds = 0;
  double cyclesBefore;
  double lossDegrees;
  double gapSeconds;
  double secondsAfter = 0.3;

  /** Harmonic amplitudes of mains as shares of the fundamental, from order 2. */
  double[] mainsHarmonics = new double[0];

  Output output = Output.SINE;
  double outputHertz;
  double outputShare = 1;

  /** Angle of the output's fundamental at the return. */
  double outputDegreesAtReturn;

  Start start = Start.AT_ONCE;
  double startSeconds;
  double ringShare;
  double ringHertz;
  double ringDecaySeconds;
  double rippleShare;
  double rippleHertz;

  ResidueKind residue = ResidueKind.NONE;
  double residueDecaySeconds;
  double residueShare;
  double residueHertz;

  double arcShare;

  /** Seconds after the loss at which the mains contact makes and breaks again, in turn. */
  double[] breakBounces = new double[0];

  /** Seconds before the return at which the output contact makes and breaks, in turn. */
  double[] makeBounces = new double[0];

  enum Output {
    SINE,
    STEPPED,
    QUASI_SQUARE
  }

  enum Start {
    AT_ONCE,
    SOFT,
    RAMP
  }

  enum ResidueKind {
    NONE,
    DECAY,
    HELD,
    MOTOR
  }

  Rig(long seed) {
    random = new SplittableRandom(seed);
    boolean sixty = random.nextBoolean();
    nominalHertz = sixty ? 60 : 50;
    nominalVolts = sixty ? 120 : 230;
    mainsHertz = nominalHertz * (1 + between(-0.0005, 0.0005));
    outputHertz = nominalHertz * (1 + between(-0.003, 0.003));
    sampleRateHertz = pick(20e3, 50e3, 100e3, 200e3, 500e3);
    bits = (int) pick(8, 8, 10, 12);
    noiseShare = pick(0.001, 0.002, 0.005, 0.01);
    cyclesBefore = between(3, 7);
    lossDegrees = random.nextInt(3) == 0 ? nearZeroCrossing() : between(0, 360);
    gapSeconds = Math.exp(between(Math.log(0.8e-3), Math.log(80e-3)));
    outputDegreesAtReturn = random.nextInt(4) == 0 ? nearZeroCrossing() : between(0, 360);
    outputShare = between(0.95, 1.05);
    mainsHarmonics = harmonics(0.03);
    offsetShare = between(-0.005, 0.005);
  }

  double between(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  double pick(double... values) {
    return values[random.nextInt(values.length)];
  }

  double nearZeroCrossing() {
    return (random.nextBoolean() ? 180 : 360) + between(-3, 3);
  }

  double[] harmonics(double most) {
    double[] shares = new double[12];
    for (int order = 3; order <= 13; order += 2) {
      shares[order - 2] = between(0, most) / Math.sqrt(order - 2);
    }
    return shares;
  }
}
