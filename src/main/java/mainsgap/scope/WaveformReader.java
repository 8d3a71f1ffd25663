package mainsgap.scope;

import java.util.Map;
import java.util.OptionalDouble;
import mainsgap.scope.RecordDescriber.Asking;
import mainsgap.scope.WaveformTransfer.Fetching;
import mainsgap.scope.WaveformTransfer.Rails;
import mainsgap.scpi.ScpiNumber;
import mainsgap.signal.Scale;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.Waveform;

/** Reads the channels of a record, and gives each its scale and a time axis. */
final class WaveformReader {
  private final Exchange exchange;
  private final InstrumentProfile profile;
  private final Pauses pauses;

  WaveformReader(Exchange exchange, InstrumentProfile profile, Pauses pauses) {
    this.exchange = exchange;
    this.profile = profile;
    this.pauses = pauses;
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

  /** Before the first channel of a record. */
  void begin() {
    exchange.send("before reading the record", fetching().before(), Map.of());
  }

  Reading read(Channel channel, AppliedRecord record) {
    String step = "reading channel " + channel.number();
    int samples = record.samples();
    Map<Placeholder, Double> whole = TemplateValues.part(channel.number(), 1, samples);
    exchange.send(step, fetching().select(), TemplateValues.channel(channel.number()));
    Preparing preparing = new Preparing(exchange, fetching().preparation(), pauses, step);
    preparing.record(channel.number(), samples);
    exchange.send(step, fetching().window(), whole);
    RecordDescription said =
        profile
            .waveform()
            .describer()
            .describe(new Asking(exchange, step, channel.number(), record));
    checkPoints(step, said, samples);
    byte[] block =
        new BlockReader(exchange, fetching(), preparing, step)
            .read(channel.number(), samples, said.layout());
    int width = block.length / samples;
    Waveform waveform =
        new Waveform(block, said.layout().format(width), scale(said, width, channel));
    checkWhole(channel, waveform, profile.waveform().rails().holeCode());
    return new Reading(
        waveform,
        new TimeAxis(
            said.firstSampleSeconds(),
            said.intervalSeconds(),
            samples,
            profile.limits().timeBasePpm()));
  }

  private Fetching fetching() {
    return profile.waveform().fetching();
  }

  private static void checkPoints(String step, RecordDescription said, int samples) {
    if (said.points().orElse(samples) != samples) {
      throw new ScopeException(
          step
              + ": the preamble claims "
              + said.points().getAsInt()
              + " points, but the record was set to "
              + samples);
    }
  }

  /** Volts at the tip, with the rails of the codes or, for volts, those of the range. */
  private Scale scale(RecordDescription said, int width, Channel channel) {
    double factor = profile.conventions().probeFactorTold() ? 1 : channel.probeFactor();
    double peak = channel.rangePeakVolts() / factor;
    double step = 2 * peak / Math.pow(2, profile.limits().converterBits());
    boolean volts = said.layout().isVolts();
    double lowest = volts ? -peak + step / 2 : said.layout().lowestCode(width);
    double highest = volts ? peak - 1.5 * step : said.layout().highestCode(width);
    Rails rails = profile.waveform().rails();
    return new Scale(
        said.scale().referenceCode(),
        said.scale().voltsPerCode() * factor,
        said.scale().originVolts() * factor,
        rails.lowestCode().orElse(lowest),
        rails.highestCode().orElse(highest));
  }

  /** SCPI-1999 has numbers that stand for none, and families have codes for a hole. */
  static void checkWhole(Channel channel, Waveform waveform, OptionalDouble holeCode) {
    if (waveform.format().isWhole() && holeCode.isEmpty()) {
      return;
    }
    double hole = holeCode.orElse(Double.NaN);
    for (int i = 0; i < waveform.length(); i++) {
      double code = waveform.format().codeAt(waveform.block(), i);
      if (code == hole || !Double.isFinite(ScpiNumber.meaning(code))) {
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
}
