package mainsgap.arming;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Map;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.CodeFormat;
import mainsgap.signal.Scale;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.Waveform;

/** Live signals of a tenth of a second at 10 kS/s. */
final class Signals {
  static final TimeAxis TIME = new TimeAxis(0, 1e-4, 1000, 25);
  private static final double RAIL_VOLTS = 500;

  private Signals() {}

  /** Starts off any zero crossing. */
  static double[] sine(double rmsVolts, double hertz) {
    double[] volts = new double[TIME.length()];
    for (int i = 0; i < volts.length; i++) {
      volts[i] = rmsVolts * Math.sqrt(2) * Math.sin(2 * Math.PI * hertz * TIME.secondsAt(i) + 0.7);
    }
    return volts;
  }

  static Waveform waveform(double[] volts) {
    ByteBuffer block = ByteBuffer.allocate(8 * volts.length).order(ByteOrder.LITTLE_ENDIAN);
    for (double v : volts) {
      block.putDouble(Math.max(-RAIL_VOLTS, Math.min(RAIL_VOLTS, v)));
    }
    return new Waveform(
        block.array(), CodeFormat.REAL_64_LSB_FIRST, new Scale(0, 1, 0, -RAIL_VOLTS, RAIL_VOLTS));
  }

  static Capture output(double[] volts) {
    return Capture.ofOutput(TIME, waveform(volts));
  }

  static Capture both(double[] outputVolts, double[] mainsVolts) {
    return new Capture(
        TIME,
        Map.of(ChannelRole.OUTPUT, waveform(outputVolts), ChannelRole.MAINS, waveform(mainsVolts)));
  }
}
