package mainsgap.desk.pictures;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import mainsgap.desk.trace.Trace;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.Envelope;
import mainsgap.signal.Scale;
import mainsgap.signal.VoltExtent;
import mainsgap.signal.Waveform;

/**
 * The channels of a capture as traces on one axis of volts, the output first. A current or a marker
 * would lie flat there: it is drawn larger or smaller by a round factor, which its name tells.
 */
final class RecordedTraces {
  /** The height of what is drawn to another scale, as a share of the output's. */
  private static final double SHARE_OF_OUTPUT = 0.6;

  private static final double[] ROUND = {5, 2, 1};

  private RecordedTraces() {}

  /** Reads every sample. */
  static List<Trace> of(Capture capture, double zeroSeconds) {
    Trace output = Trace.of("output", capture.time(), capture.output(), zeroSeconds);
    List<Trace> traces = new ArrayList<>();
    traces.add(output);
    for (Map.Entry<ChannelRole, Waveform> channel : capture.waveforms().entrySet()) {
      ChannelRole role = channel.getKey();
      Waveform waveform = channel.getValue();
      switch (role) {
        case OUTPUT -> {}
        case MAINS, SECOND_LEG ->
            traces.add(Trace.of(role.words(), capture.time(), waveform, zeroSeconds));
        case LOAD_CURRENT, MARKER -> traces.add(toScaleOf(output, role, waveform, zeroSeconds));
      }
    }
    return traces;
  }

  private static Trace toScaleOf(
      Trace output, ChannelRole role, Waveform waveform, double zeroSeconds) {
    double factor = factor(output.envelope().extent(), Envelope.of(waveform).extent());
    String unit = role == ChannelRole.LOAD_CURRENT ? "A" : "V";
    String name = role.words() + ", 1 " + unit + " drawn as " + plain(factor) + " V";
    Waveform drawn =
        new Waveform(waveform.block(), waveform.format(), by(factor, waveform.scale()));
    return Trace.of(name, output.time(), drawn, zeroSeconds);
  }

  private static Scale by(double factor, Scale scale) {
    return new Scale(
        scale.referenceCode(),
        scale.voltsPerCode() * factor,
        scale.originVolts() * factor,
        scale.lowestCode(),
        scale.highestCode());
  }

  /**
   * The largest round one that keeps {@code own} within its share of {@code output}; 1 for none.
   */
  static double factor(VoltExtent output, VoltExtent own) {
    double most = SHARE_OF_OUTPUT * peak(output) / peak(own);
    if (!(most > 0) || Double.isInfinite(most)) {
      return 1;
    }
    double power = Math.pow(10, Math.floor(Math.log10(most)));
    for (double round : ROUND) {
      if (round * power <= most) {
        return round * power;
      }
    }
    return power;
  }

  private static double peak(VoltExtent extent) {
    return extent.isNone()
        ? 0
        : Math.max(Math.abs(extent.lowestVolts()), Math.abs(extent.highestVolts()));
  }

  private static String plain(double factor) {
    return BigDecimal.valueOf(factor)
        .round(new MathContext(3))
        .stripTrailingZeros()
        .toPlainString();
  }
}
