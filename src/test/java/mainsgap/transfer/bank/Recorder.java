package mainsgap.transfer.bank;

import java.util.EnumMap;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.CodeFormat;
import mainsgap.signal.Scale;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.Waveform;

/**
 * The scope: a probe that may be slow, noise, a converter of so many bits, a free sampling grid, a
 * clock that is off by no more than is stated. What it shows is right at the end of the record and
 * runs fast or slow before.
 */
final class Recorder {
  private static final double TIME_BASE_PPM = 25;

  /** The low pass runs in steps finer than a sample, so that edges keep their place. */
  private static final int FILTER_STEPS = 8;

  private final Rig rig;
  private final TimeAxis time;

  /** Of true time that passes in a second of the record's. */
  private final double pace;

  Recorder(Rig rig) {
    this.rig = rig;
    double interval = rig.intervalSeconds();
    int length = (int) Math.round(rig.endSeconds() * rig.sampleRateHertz);
    this.time = new TimeAxis(rig.dice.share() * interval, interval, length, TIME_BASE_PPM);
    this.pace = 1 + 1e-6 * rig.dice.between(-TIME_BASE_PPM, TIME_BASE_PPM);
  }

  Capture record(LoadVoltage load) {
    Map<ChannelRole, Waveform> waveforms = new EnumMap<>(ChannelRole.class);
    waveforms.put(ChannelRole.OUTPUT, channel(load::voltsAt));
    if (rig.watchesMains) {
      waveforms.put(ChannelRole.MAINS, channel(load::mainsVoltsAt));
    }
    return new Capture(time, waveforms);
  }

  private Waveform channel(DoubleUnaryOperator voltsAt) {
    Dice noise = rig.dice.split();
    byte[] block = new byte[2 * time.length()];
    int top = (1 << rig.bits) - 1;
    double lsb = rig.voltsPerCode();
    double volts = voltsAt.applyAsDouble(trueSecondsAt(0));
    for (int i = 0; i < time.length(); i++) {
      volts = probed(voltsAt, trueSecondsAt(i), volts);
      double noisy = volts + rig.noiseShare * rig.peakVolts() * noise.gaussian();
      int code = (int) Math.max(0, Math.min(top, Math.round(noisy / lsb + top / 2.0)));
      block[2 * i] = (byte) code;
      block[2 * i + 1] = (byte) (code >> 8);
    }
    Scale scale = new Scale(top / 2.0, lsb, 0, 0, top);
    return new Waveform(block, CodeFormat.UNSIGNED_16_LSB_FIRST, scale);
  }

  private double trueSecondsAt(int index) {
    double end = rig.endSeconds();
    return end + pace * (time.secondsAt(index) - end);
  }

  /** One interval of a first-order low pass, or none. */
  private double probed(DoubleUnaryOperator voltsAt, double seconds, double earlierVolts) {
    if (rig.lowPassSeconds == 0) {
      return voltsAt.applyAsDouble(seconds);
    }
    double step = rig.intervalSeconds() / FILTER_STEPS;
    double keep = Math.exp(-step / rig.lowPassSeconds);
    double volts = earlierVolts;
    for (int k = FILTER_STEPS; k > 0; k--) {
      volts = keep * volts + (1 - keep) * voltsAt.applyAsDouble(seconds - (k - 0.5) * step);
    }
    return volts;
  }
}
