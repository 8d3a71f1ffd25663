package mainsgap.scope;

import java.util.Map;
import java.util.OptionalDouble;
import mainsgap.scope.WaveformTransfer.TenFields;
import mainsgap.scope.WaveformTransfer.TypedData;
import mainsgap.scpi.ScpiNumber;
import mainsgap.signal.CodeFormat;
import mainsgap.signal.Scale;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.Waveform;

/** Reads one channel's record and gives it a scale and a time axis. */
final class WaveformReader {
  private final Exchange exchange;
  private final InstrumentProfile profile;

  WaveformReader(Exchange exchange, InstrumentProfile profile) {
    this.exchange = exchange;
    this.profile = profile;
  }

  /**
   * A channel of a finished record.
   *
   * @param number from 1
   * @param probeFactor volts at the tip for each volt at the input
   * @param rangePeakVolts the range as it was read back, at the tip
   */
  record Channel(int number, double probeFactor, double rangePeakVolts) {}

  /** A channel's samples, and the time axis that came with them. */
  record Reading(Waveform waveform, TimeAxis time) {}

  Reading read(Channel channel, AppliedRecord record) {
    String step = "reading channel " + channel.number();
    exchange.send(step, profile.waveform().select(), TemplateValues.channel(channel.number()));
    WaveformTransfer how = profile.waveform();
    if (how instanceof TenFields tenFields) {
      return readTenFields(step, tenFields, channel, record);
    }
    return readTypedData(step, (TypedData) how, channel, record);
  }

  private Reading readTypedData(String step, TypedData how, Channel channel, AppliedRecord record) {
    byte[] block =
        new BlockReader(exchange, how, step).read(channel.number(), record.samples(), 4, 4);
    CodeFormat format =
        how.lsbFirst() ? CodeFormat.REAL_32_LSB_FIRST : CodeFormat.REAL_32_MSB_FIRST;
    Waveform waveform = new Waveform(block, format, typedScale(channel));
    checkNumbers(channel, waveform);
    return new Reading(
        waveform, axis(record.firstSampleSeconds(), record.intervalSeconds(), record.samples()));
  }

  /** Volts whose rails are the ends of the range, less half a step of the converter. */
  private Scale typedScale(Channel channel) {
    double factor = profile.conventions().probeFactorTold() ? 1 : channel.probeFactor();
    double peak = channel.rangePeakVolts() / factor;
    double step = 2 * peak / Math.pow(2, profile.limits().converterBits());
    return new Scale(0, factor, 0, -peak + step / 2, peak - 1.5 * step);
  }

  /** SCPI-1999 has numbers that stand for none: a hole, an overload. */
  static void checkNumbers(Channel channel, Waveform waveform) {
    for (int i = 0; i < waveform.length(); i++) {
      if (!Double.isFinite(ScpiNumber.meaning(waveform.format().codeAt(waveform.block(), i)))) {
        throw new ScopeException(
            "channel "
                + channel.number()
                + " has no voltage in sample "
                + (i + 1)
                + " of "
                + waveform.length()
                + ": the record has a hole or an overload; choose a larger range and repeat");
      }
    }
  }

  private Reading readTenFields(String step, TenFields how, Channel channel, AppliedRecord record) {
    Map<Placeholder, Double> whole = TemplateValues.part(channel.number(), 1, record.samples());
    exchange.send(step, how.window(), whole);
    Preamble preamble = preamble(step, how, channel);
    if (preamble.points() != record.samples()) {
      throw new ScopeException(
          step
              + ": the preamble claims "
              + preamble.points()
              + " points, but the record was set to "
              + record.samples());
    }
    byte[] block =
        new BlockReader(exchange, how, step)
            .read(channel.number(), record.samples(), how.leastBytes(), how.mostBytes());
    int width = block.length / record.samples();
    Waveform waveform = new Waveform(block, format(how, width), scale(how, preamble, width));
    return new Reading(
        waveform, axis(preamble.firstSampleSeconds(), preamble.x().increment(), record.samples()));
  }

  private Preamble preamble(String step, TenFields how, Channel channel) {
    return Preamble.of(
        exchange.askNumbers(step, how.preamble(), TemplateValues.channel(channel.number())));
  }

  private static Scale scale(TenFields how, Preamble preamble, int width) {
    double codes = Math.pow(2, 8.0 * width);
    double lowest = orElse(how.lowestCode(), how.signed() ? -codes / 2 : 0);
    double highest = orElse(how.highestCode(), (how.signed() ? codes / 2 : codes) - 1);
    return preamble.scale(how.scaling(), lowest, highest);
  }

  private static double orElse(OptionalDouble code, double otherwise) {
    return code.isPresent() ? code.getAsDouble() : otherwise;
  }

  private static CodeFormat format(TenFields how, int width) {
    if (width == 1) {
      return how.signed() ? CodeFormat.SIGNED_8 : CodeFormat.UNSIGNED_8;
    }
    if (how.lsbFirst()) {
      return how.signed() ? CodeFormat.SIGNED_16_LSB_FIRST : CodeFormat.UNSIGNED_16_LSB_FIRST;
    }
    return how.signed() ? CodeFormat.SIGNED_16_MSB_FIRST : CodeFormat.UNSIGNED_16_MSB_FIRST;
  }

  private TimeAxis axis(double firstSeconds, double intervalSeconds, int samples) {
    return new TimeAxis(firstSeconds, intervalSeconds, samples, profile.limits().timeBasePpm());
  }
}
