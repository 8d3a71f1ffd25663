package mainsgap.transfer;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.EnumMap;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.CodeFormat;
import mainsgap.signal.Scale;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.Waveform;

/** A capture of voltages that are written down as functions of time, for 230 V and 50 Hz. */
final class SketchedCapture {
  static final double PEAK_VOLTS = 230 * Math.sqrt(2);

  private final TimeAxis time;
  private final Map<ChannelRole, Waveform> channels = new EnumMap<>(ChannelRole.class);

  SketchedCapture(TimeAxis time) {
    this.time = time;
  }

  /** Adds a channel; {@code noise} is the half-width of a triangular distribution. */
  SketchedCapture with(ChannelRole role, double noise, DoubleUnaryOperator signal) {
    SplittableRandom dice = new SplittableRandom(role.name().length());
    ByteBuffer block = ByteBuffer.allocate(time.length() * 8).order(ByteOrder.LITTLE_ENDIAN);
    for (int i = 0; i < time.length(); i++) {
      double spread = noise * (dice.nextDouble() + dice.nextDouble() - 1);
      block.putDouble(signal.applyAsDouble(time.secondsAt(i)) + spread);
    }
    channels.put(role, new Waveform(block.array(), CodeFormat.REAL_64_LSB_FIRST, Scale.VOLTS));
    return this;
  }

  Capture capture() {
    return new Capture(time, channels);
  }

  /** A sine of nominal height. */
  static double sine(double seconds, double hertz, double degrees) {
    return PEAK_VOLTS * Math.sin(2 * Math.PI * hertz * seconds + Math.toRadians(degrees));
  }

  static double mains(double seconds) {
    return sine(seconds, 50, 0);
  }

  static double inverter(double seconds) {
    return sine(seconds, 50.02, 40);
  }
}
