package mainsgap.desk.pictures;

import java.util.EnumMap;
import java.util.Map;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.CodeFormat;
import mainsgap.signal.PeriodicModel;
import mainsgap.signal.Scale;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.Waveform;

/** Invented captures: 230 V mains, lost 1 ms after the trigger, and an inverter after 8.42 ms. */
final class InventedCaptures {
  static final double LOSS_SECONDS = 0.001;
  static final double GAP_SECONDS = 0.00842;
  static final PeriodicModel MAINS = new Sine(325, 50, 0.19);
  static final PeriodicModel BACKUP = new Sine(318, 50.2, 0.24);
  private static final int SAMPLES = 40_000;
  private static final double RATE_HERTZ = 100_000;

  private InventedCaptures() {}

  /** What the output does. */
  static double output(double seconds) {
    double since = seconds - LOSS_SECONDS;
    if (since < 0) {
      return MAINS.voltsAt(seconds);
    }
    return since < GAP_SECONDS
        ? MAINS.voltsAt(LOSS_SECONDS) * Math.exp(-since / 0.0006)
        : BACKUP.voltsAt(seconds);
  }

  static double lost(double seconds) {
    return seconds < LOSS_SECONDS
        ? MAINS.voltsAt(seconds)
        : MAINS.voltsAt(LOSS_SECONDS) * Math.exp(-(seconds - LOSS_SECONDS) / 0.0006);
  }

  static Capture ofOutput(DoubleUnaryOperator volts) {
    return Capture.ofOutput(time(), waveform(volts, 400, 1));
  }

  static Capture ofEveryChannel() {
    Map<ChannelRole, Waveform> waveforms = new EnumMap<>(ChannelRole.class);
    waveforms.put(ChannelRole.OUTPUT, waveform(InventedCaptures::output, 400, 1));
    waveforms.put(ChannelRole.MAINS, waveform(InventedCaptures::lost, 400, 2));
    waveforms.put(ChannelRole.SECOND_LEG, waveform(t -> -0.98 * output(t), 400, 3));
    waveforms.put(ChannelRole.LOAD_CURRENT, waveform(t -> output(t) / 160, 5, 4));
    return new Capture(time(), waveforms);
  }

  static TimeAxis time() {
    return new TimeAxis(-0.12, 1 / RATE_HERTZ, SAMPLES, 20);
  }

  private static Waveform waveform(DoubleUnaryOperator volts, double range, long seed) {
    Random random = new Random(seed);
    TimeAxis time = time();
    double step = range / 32768;
    byte[] block = new byte[2 * SAMPLES];
    for (int i = 0; i < SAMPLES; i++) {
      double value = volts.applyAsDouble(time.secondsAt(i)) + range / 300 * random.nextGaussian();
      int code = (int) Math.round(Math.max(-32767, Math.min(32767, value / step)));
      block[2 * i] = (byte) code;
      block[2 * i + 1] = (byte) (code >> 8);
    }
    return new Waveform(
        block, CodeFormat.SIGNED_16_LSB_FIRST, new Scale(0, step, 0, -32767, 32767));
  }

  private record Sine(double amplitudeVolts, double frequencyHertz, double cyclesAtZero)
      implements PeriodicModel {
    @Override
    public double voltsAt(double seconds) {
      return amplitudeVolts * Math.sin(Math.toRadians(angleDegreesAt(seconds)));
    }

    @Override
    public double angleDegreesAt(double seconds) {
      double cycles = frequencyHertz * seconds + cyclesAtZero;
      return 360 * (cycles - Math.floor(cycles));
    }

    @Override
    public double spreadVoltsAt(double seconds) {
      return 1;
    }
  }
}
