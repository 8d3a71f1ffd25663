package mainsgap.transfer.bank;

import java.util.SplittableRandom;
import mainsgap.signal.Capture;
import mainsgap.signal.CodeFormat;
import mainsgap.signal.Event;
import mainsgap.signal.Scale;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.Waveform;
import mainsgap.transfer.MeasuringTask;

/** Turns the settings of a {@link Rig} into a capture: waveforms in closed form, then a scope. */
final class Generator {
  private static final double RANGE_SHARE = 1.6;

  private final Rig rig;
  private final double peak;
  private final double lossSeconds;
  private final double returnSeconds;
  private final double mainsAngleAtLoss;

  private Generator(Rig rig) {
    this.rig = rig;
    this.peak = rig.nominalVolts * Math.sqrt(2);
    this.lossSeconds = rig.cyclesBefore / rig.nominalHertz;
    this.returnSeconds = lossSeconds + rig.gapSeconds;
    this.mainsAngleAtLoss = Math.toRadians(rig.lossDegrees);
  }

  static KnownCapture capture(Rig rig) {
    return new Generator(rig).capture();
  }

  private KnownCapture capture() {
    double dt = 1 / rig.sampleRateHertz;
    int n = (int) Math.round((returnSeconds + rig.secondsAfter) * rig.sampleRateHertz);
    double first = rig.random.nextDouble() * dt;
    SplittableRandom noise = rig.random.split();
    double lsb = 2 * RANGE_SHARE * peak / (1 << rig.bits);
    byte[] block = new byte[2 * n];
    int top = (1 << rig.bits) - 1;
    double filtered = voltsAt(first);
    double keep = rig.lowPassSeconds > 0 ? Math.exp(-dt / rig.lowPassSeconds) : 0;
    for (int i = 0; i < n; i++) {
      double volts = voltsAt(first + i * dt);
      if (rig.lowPassSeconds > 0) {
        filtered = filteredAt(first + i * dt, dt, filtered, keep);
        volts = filtered;
      }
      volts += rig.noiseShare * peak * gaussian(noise);
      int code = (int) Math.round(volts / lsb + top / 2.0);
      code = Math.max(0, Math.min(top, code));
      block[2 * i] = (byte) code;
      block[2 * i + 1] = (byte) (code >> 8);
    }
    Waveform waveform =
        new Waveform(block, CodeFormat.UNSIGNED_16_LSB_FIRST, new Scale(top / 2.0, lsb, 0, 0, top));
    TimeAxis time = new TimeAxis(first, dt, n, 25);
    return new KnownCapture(
        Capture.ofOutput(time, waveform),
        new MeasuringTask(Event.LOSS, rig.nominalVolts, rig.nominalHertz),
        lossSeconds,
        returnSeconds,
        rig.noiseShare);
  }

  /** One interval of a first-order low pass, in small steps so that edges keep their place. */
  private double filteredAt(double t, double dt, double filtered, double keep) {
    int steps = 8;
    double keepStep = Math.pow(keep, 1.0 / steps);
    double value = filtered;
    for (int k = 1; k <= steps; k++) {
      value = keepStep * value + (1 - keepStep) * voltsAt(t - dt + (k - 0.5) * dt / steps);
    }
    return value;
  }

  private static double gaussian(SplittableRandom random) {
    double u = 1 - random.nextDouble();
    return Math.sqrt(-2 * Math.log(u)) * Math.cos(2 * Math.PI * random.nextDouble());
  }

  private double voltsAt(double t) {
    double base = peak * (rig.offsetShare + rig.driftSharePerSecond * t);
    if (t < lossSeconds) {
      return base + mains(t);
    }
    if (t >= returnSeconds) {
      return base + output(t, returnSeconds);
    }
    if (isMade(rig.breakBounces, t - lossSeconds)) {
      return base + mains(t);
    }
    double toReturn = returnSeconds - t;
    if (isMadeBeforeReturn(toReturn)) {
      return base + output(t, returnSeconds);
    }
    return base + residue(t);
  }

  private static boolean isMade(double[] changes, double since) {
    boolean made = false;
    for (double change : changes) {
      if (since >= change) {
        made = !made;
      }
    }
    return made;
  }

  /** The bounces are given as seconds before the return, longest first: make, break, make ... */
  private boolean isMadeBeforeReturn(double toReturn) {
    boolean made = false;
    for (double change : rig.makeBounces) {
      if (toReturn <= change) {
        made = !made;
      }
    }
    return made;
  }

  private double mains(double t) {
    double angle = 2 * Math.PI * rig.mainsHertz * (t - lossSeconds) + mainsAngleAtLoss;
    double volts = Math.sin(angle);
    for (int k = 0; k < rig.mainsHarmonics.length; k++) {
      volts += rig.mainsHarmonics[k] * Math.sin((k + 2) * angle + k);
    }
    return peak * volts;
  }

  private double residue(double t) {
    double since = t - lossSeconds;
    double atLoss = mains(lossSeconds);
    double decay = Math.exp(-since / Math.max(1e-9, rig.residueDecaySeconds));
    return switch (rig.residue) {
      case NONE -> 0;
      case DECAY -> atLoss * decay;
      case HELD -> peak * rig.residueShare;
      case MOTOR ->
          peak
              * rig.residueShare
              * decay
              * Math.sin(2 * Math.PI * rig.residueHertz * since + mainsAngleAtLoss);
    };
  }

  private double output(double t, double makeSeconds) {
    double since = Math.max(0, t - makeSeconds);
    double angle =
        2 * Math.PI * rig.outputHertz * (t - makeSeconds)
            + Math.toRadians(rig.outputDegreesAtReturn);
    double amplitude =
        switch (rig.start) {
          case AT_ONCE -> 1;
          case SOFT -> 1 - Math.exp(-since / rig.startSeconds);
          case RAMP -> Math.min(1, since / rig.startSeconds);
        };
    double ring =
        rig.ringShare
            * Math.exp(-since / Math.max(1e-9, rig.ringDecaySeconds))
            * Math.cos(2 * Math.PI * rig.ringHertz * since);
    double ripple = rig.rippleShare * Math.sin(2 * Math.PI * rig.rippleHertz * t);
    return peak * rig.outputShare * (amplitude * shape(angle) - ring + ripple);
  }

  private double shape(double angle) {
    double cycles = angle / (2 * Math.PI);
    double phase = cycles - Math.floor(cycles);
    return switch (rig.output) {
      case SINE -> Math.sin(angle);
      case QUASI_SQUARE ->
          phase >= 0.125 && phase < 0.375 ? 1 : phase >= 0.625 && phase < 0.875 ? -1 : 0;
      case STEPPED -> stepped(phase);
    };
  }

  /** Five levels a half cycle, each with the width that a sine of that height has. */
  private static double stepped(double phase) {
    double sine = Math.sin(2 * Math.PI * phase);
    return Math.round(sine * 3) / 3.0;
  }
}
