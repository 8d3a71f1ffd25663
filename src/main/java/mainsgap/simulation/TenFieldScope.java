package mainsgap.simulation;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * The dialect of a bench scope with triggers of many kinds, whose waveforms come as a ten-field
 * preamble and blocks of codes. The instrument that speaks it lets one message in at a time.
 */
final class TenFieldScope implements Instrument.Dialect {
  private static final int CHANNELS = ScopeRecord.CHANNELS;
  private static final int VERTICAL_DIVISIONS = 8;
  private static final int HORIZONTAL_DIVISIONS = 10;
  private static final int MOST_POINTS = 2_500_000;

  private final ScopeCore core;
  private final FaultSwitch faults;
  private final String serial;
  private final WaveformCommands reader;

  private final double[] probeFactor = new double[CHANNELS];
  private final double[] voltsPerDivision = new double[CHANNELS];
  private final double[] middleVolts = new double[CHANNELS];
  private final boolean[] displayed = new boolean[CHANNELS];
  private final TriggerPanel triggers;
  private double secondsPerDivision;
  private double offsetSeconds;
  private int points;

  TenFieldScope(ScopeCore core, FaultSwitch faults, String serial, PreambleVariant variant) {
    this.core = core;
    this.faults = faults;
    this.serial = serial;
    this.triggers = new TriggerPanel(faults);
    this.reader = new WaveformCommands(core, faults, variant);
    setDefaults();
  }

  @Override
  public String identity() {
    return "Mainsgap,Simulated scope," + serial + ",1.0";
  }

  @Override
  public void reset() {
    core.stop();
    setDefaults();
  }

  /** Run, single and stop are sequential here: nothing is ever pending. */
  @Override
  public boolean isPending() {
    return false;
  }

  @Override
  public void finishPending() {}

  @Override
  public void addTo(CommandTable table) {
    table
        .command("STOP", call -> core.stop())
        .command("SINGle", call -> start(triggers.trigger()))
        .command("RUN", call -> start(null))
        .command("TFORce", call -> core.force())
        .query("TRIGger:STATus?", call -> Reply.text(state()));
    addChannels(table);
    addTimeBase(table);
    triggers.addTo(table);
    reader.addTo(table);
  }

  private void addChannels(CommandTable table) {
    table
        .command(
            "CHANnel#:DISPlay", CHANNELS, call -> displayed[call.suffix() - 1] = call.onOrOff())
        .query(
            "CHANnel#:DISPlay?",
            CHANNELS,
            call -> faults.number(displayed[call.suffix() - 1] ? 1 : 0))
        .command("CHANnel#:COUPling", CHANNELS, call -> call.oneOf("DC"))
        .query("CHANnel#:COUPling?", CHANNELS, call -> Reply.text("DC"))
        .command("CHANnel#:PROBe", CHANNELS, this::setProbe)
        .query("CHANnel#:PROBe?", CHANNELS, call -> faults.number(probeFactor[call.suffix() - 1]))
        .command("CHANnel#:SCALe", CHANNELS, this::setScale)
        .query(
            "CHANnel#:SCALe?", CHANNELS, call -> faults.number(voltsPerDivision[call.suffix() - 1]))
        .command("CHANnel#:OFFSet", CHANNELS, this::setOffset)
        .query("CHANnel#:OFFSet?", CHANNELS, call -> faults.number(middleVolts[call.suffix() - 1]));
  }

  private void addTimeBase(CommandTable table) {
    table
        .command("TIMebase[:MAIN]:SCALe", call -> secondsPerDivision = call.number(1e-9, 100))
        .query("TIMebase[:MAIN]:SCALe?", call -> faults.number(secondsPerDivision))
        .command("TIMebase[:MAIN]:OFFSet", call -> offsetSeconds = call.number(-1000, 1000))
        .query("TIMebase[:MAIN]:OFFSet?", call -> faults.number(offsetSeconds))
        .command("ACQuire:MDEPth", call -> points = call.whole(100, MOST_POINTS))
        .query("ACQuire:MDEPth?", call -> faults.number(points))
        .query("ACQuire:SRATe?", call -> faults.number(1 / intervalSeconds()));
  }

  private void setDefaults() {
    Arrays.fill(probeFactor, 1);
    Arrays.fill(voltsPerDivision, 1);
    Arrays.fill(middleVolts, 0);
    Arrays.fill(displayed, false);
    displayed[0] = true;
    triggers.setDefaults();
    secondsPerDivision = 0.01;
    offsetSeconds = 0;
    points = 10_000;
    reader.setDefaults();
  }

  /** Scale and offset are volts at the tip: they follow the probe factor. */
  private void setProbe(Call call) {
    int channel = call.suffix() - 1;
    double factor = call.number(0.01, 10_000);
    double ratio = factor / probeFactor[channel];
    probeFactor[channel] = factor;
    voltsPerDivision[channel] *= ratio;
    middleVolts[channel] *= ratio;
  }

  private void setScale(Call call) {
    int channel = call.suffix() - 1;
    double factor = probeFactor[channel];
    voltsPerDivision[channel] = faults.spanOf(call.number(1e-3 * factor, 20 * factor));
  }

  private void setOffset(Call call) {
    int channel = call.suffix() - 1;
    double reach = 100 * probeFactor[channel];
    middleVolts[channel] = call.number(-reach, reach);
  }

  private void start(@Nullable Trigger trigger) {
    faults.allowStart();
    List<VoltageRange> ranges =
        IntStream.range(0, CHANNELS)
            .mapToObj(
                channel ->
                    VoltageRange.told(
                        channel + 1,
                        probeFactor[channel],
                        middleVolts[channel],
                        voltsPerDivision[channel] * VERTICAL_DIVISIONS))
            .toList();
    double firstSample = offsetSeconds - secondsPerDivision * HORIZONTAL_DIVISIONS / 2;
    core.arm(new RecordPlan(firstSample, intervalSeconds(), points, trigger, ranges), faults.now());
  }

  private double intervalSeconds() {
    return secondsPerDivision * HORIZONTAL_DIVISIONS / points;
  }

  private String state() {
    return switch (core.shownStage()) {
      case FILLING -> "RUN";
      case WATCHING -> "WAIT";
      case RECORDING -> "TD";
      case IDLE, COMPLETE -> "STOP";
    };
  }
}
