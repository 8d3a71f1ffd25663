package mainsgap.desk.trace;

import java.util.List;
import java.util.Random;
import mainsgap.signal.CodeFormat;
import mainsgap.signal.Scale;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.Waveform;

/** Invented captures to draw: a mains of 230 V, a gap, and what an inverter may do after it. */
final class TraceExamples {
  private static final double PEAK_VOLTS = 325.27;
  private static final double HERTZ = 50;
  private static final double VOLTS_PER_CODE = 400.0 / 32768;

  private TraceExamples() {}

  /**
   * A capture whose loss is at its trigger, in 16-bit codes.
   *
   * @param gapSeconds how long the output is without power
   * @param noiseVolts standard deviation of the noise
   */
  static Trace capture(
      String name,
      int samples,
      double rateHertz,
      double lossCycles,
      double gapSeconds,
      double noiseVolts) {
    Random random = new Random(samples + Math.round(gapSeconds * 1e6));
    TimeAxis time = new TimeAxis(-0.3 * samples / rateHertz, 1 / rateHertz, samples, 20);
    byte[] block = new byte[2 * samples];
    for (int i = 0; i < samples; i++) {
      double seconds = time.secondsAt(i);
      double volts = voltsAt(seconds, lossCycles, gapSeconds) + noiseVolts * random.nextGaussian();
      int code = (int) Math.round(Math.max(-32767, Math.min(32767, volts / VOLTS_PER_CODE)));
      block[2 * i] = (byte) code;
      block[2 * i + 1] = (byte) (code >> 8);
    }
    Waveform waveform =
        new Waveform(
            block, CodeFormat.SIGNED_16_LSB_FIRST, new Scale(0, VOLTS_PER_CODE, 0, -32767, 32767));
    return Trace.of(name, time, waveform, 0);
  }

  static double before(double seconds, double lossCycles) {
    return PEAK_VOLTS * Math.sin(2 * Math.PI * (HERTZ * seconds + lossCycles));
  }

  static double after(double seconds, double lossCycles) {
    double angle = 2 * Math.PI * (1.004 * HERTZ * seconds + lossCycles + 0.06);
    return 0.97 * PEAK_VOLTS * (Math.sin(angle) + 0.03 * Math.sin(3 * angle));
  }

  /** A capture with all that can stand around it. */
  static TraceScene whole(int samples, double rateHertz, double noiseVolts) {
    double gap = 0.00842;
    double loss = 0.19;
    return TraceScene.of(List.of(capture("output", samples, rateHertz, loss, gap, noiseVolts)))
        .withCurves(
            List.of(
                new Curve("mains, as fitted", t -> before(t, loss), new TimeSpan(-0.1, 0.02), 0.02),
                new Curve("backup, as fitted", t -> after(t, loss), new TimeSpan(0, 0.12), 0.02)))
        .withGap(Gap.of(gap, "8.42 ms ± 0.05 ms"))
        .withRuler(new Ruler(0.010, 0.0002, "declared: at most 10 ms"));
  }

  private static double voltsAt(double seconds, double lossCycles, double gapSeconds) {
    if (seconds < 0) {
      return before(seconds, lossCycles);
    }
    if (seconds < gapSeconds) {
      return before(0, lossCycles) * Math.exp(-seconds / 0.0006);
    }
    double since = seconds - gapSeconds;
    double ringing = 60 * Math.exp(-since / 0.0015) * Math.sin(2 * Math.PI * 1500 * since);
    return after(seconds, lossCycles) + ringing;
  }
}
