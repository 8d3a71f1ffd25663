package mainsgap.simulation;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import mainsgap.waiting.Clock;
import mainsgap.waiting.StopRequest;

/**
 * The dialect of a bench scope that sends volts, as floats or as text, and that has no word for its
 * state: its start is an overlapped command, and {@code *OPC} tells its end. The instrument that
 * speaks it lets one message in at a time.
 */
final class VoltsScope implements Instrument.Dialect {
  private static final int CHANNELS = ScopePanel.CHANNELS;
  private static final int MOST_POINTS_AT_ONCE = 200_000;
  private static final Duration POLL = Duration.ofMillis(2);

  /** SCPI-1999 Vol. 2 7.2.1.5: the number that stands for none. */
  private static final float NOT_A_NUMBER = 9.91E37f;

  private final ScopeCore core;
  private final FaultSwitch faults;
  private final String serial;
  private final ScopePanel panel;
  private final Clock clock;
  private final StopRequest stop;
  private double centreSeconds;
  private boolean asText;
  private ByteOrder order = ByteOrder.BIG_ENDIAN;

  VoltsScope(ScopeCore core, FaultSwitch faults, String serial, Clock clock, StopRequest stop) {
    this.core = core;
    this.faults = faults;
    this.serial = serial;
    this.panel = new ScopePanel(core, faults, true);
    this.clock = clock;
    this.stop = stop;
    setDefaults();
  }

  @Override
  public String identity() {
    return "Mainsgap,Simulated volts scope," + serial + ",1.0";
  }

  @Override
  public void reset() {
    core.stop();
    setDefaults();
  }

  @Override
  public boolean isPending() {
    ScopeCore.Stage stage = core.stage();
    return stage != ScopeCore.Stage.IDLE && stage != ScopeCore.Stage.COMPLETE;
  }

  @Override
  public void finishPending() {
    while (isPending()) {
      clock.pause(POLL, stop);
    }
  }

  @Override
  public void addTo(CommandTable table) {
    table
        .command("STOP", call -> core.stop())
        .command(
            "SINGle",
            call -> panel.start(centreSeconds - panel.durationSeconds / 2, panel.trigger()))
        .command("TRIGger:FORCe", call -> core.force());
    addChannels(table);
    addRecord(table);
    addTrigger(table);
    addData(table);
  }

  private void addChannels(CommandTable table) {
    table
        .command("CHANnel#:STATe", CHANNELS, Call::onOrOff)
        .command("CHANnel#:COUPling", CHANNELS, call -> call.oneOf("DC"))
        .command("CHANnel#:PROBe", CHANNELS, panel::setProbe)
        .command("CHANnel#:RANGe", CHANNELS, call -> panel.setSpan(call, 1))
        .query("CHANnel#:RANGe?", CHANNELS, call -> faults.number(panel.spanVolts(call.suffix())))
        .command("CHANnel#:OFFSet", CHANNELS, call -> panel.setMiddle(call, 1));
  }

  private void addRecord(CommandTable table) {
    table
        .command("TIMebase:RANGe", call -> panel.durationSeconds = call.number(1e-8, 1000))
        .query("TIMebase:RANGe?", call -> faults.number(panel.durationSeconds))
        .command("TIMebase:POSition", call -> centreSeconds = call.number(-1000, 1000))
        .command("ACQuire:POINts", call -> panel.points = call.whole(100, ScopePanel.MOST_POINTS))
        .query("ACQuire:POINts?", call -> faults.number(panel.points))
        .query("ACQuire:RESolution?", call -> faults.number(panel.intervalSeconds()));
  }

  private void addTrigger(CommandTable table) {
    table
        .command(
            "TRIGger:TYPE",
            call -> panel.waitsForTimeOut = call.oneOf("EDGE", "TIM", "TIMEOUT").startsWith("T"))
        .command(
            "TRIGger:SOURce", call -> panel.triggerChannel = call.numberAfter("CHAN", CHANNELS))
        .command(
            "TRIGger:LEVel",
            call ->
                panel.levelVolts =
                    call.number(-ScopePanel.LEVEL_REACH_VOLTS, ScopePanel.LEVEL_REACH_VOLTS))
        .command("TRIGger:TIMeout:TIME", call -> panel.timeOutSeconds = call.number(1e-8, 10));
  }

  private void addData(CommandTable table) {
    table
        .command("FORMat[:DATA]", this::setFormat)
        .command("FORMat:BORDer", this::setOrder)
        .query("CHANnel#:DATA?", CHANNELS, this::data)
        .query("CHANnel#:DATA:XINCrement?", CHANNELS, call -> time(false))
        .query("CHANnel#:DATA:XORigin?", CHANNELS, call -> time(true));
  }

  private void setDefaults() {
    panel.setDefaults();
    centreSeconds = 0;
    asText = false;
    order = ByteOrder.BIG_ENDIAN;
  }

  private void setFormat(Call call) {
    String format = String.join(",", call.parameters()).toUpperCase(Locale.ROOT);
    if (!List.of("REAL,32", "ASC", "ASCII").contains(format)) {
      throw new ScpiFault(ScpiError.ILLEGAL_PARAMETER_VALUE);
    }
    asText = format.startsWith("ASC");
  }

  private void setOrder(Call call) {
    order =
        call.oneOf("LSBF", "LSBFIRST", "MSBF", "MSBFIRST").startsWith("LSB")
            ? ByteOrder.LITTLE_ENDIAN
            : ByteOrder.BIG_ENDIAN;
  }

  private Reply time(boolean ofFirst) {
    RecordPlan plan = new RecordWindow(core, MOST_POINTS_AT_ONCE).record().plan();
    return faults.number(ofFirst ? plan.firstSampleSeconds() : plan.intervalSeconds());
  }

  /** The volts from the first to the last point asked for, or of the whole record. */
  private Reply data(Call call) {
    RecordWindow window = new RecordWindow(core, MOST_POINTS_AT_ONCE);
    window.setLast(ScopePanel.MOST_POINTS);
    if (!call.parameters().isEmpty()) {
      window.setFirst(call.whole(0, 1, ScopePanel.MOST_POINTS));
      window.setLast(call.whole(1, 1, ScopePanel.MOST_POINTS));
    }
    float[] volts = volts(window, call.suffix());
    return asText ? Reply.block(text(volts)) : Reply.block(floats(volts));
  }

  private float[] volts(RecordWindow window, int channel) {
    short[] codes = window.codes(channel);
    VoltageRange range = window.record().plan().ranges().get(channel - 1);
    double step = range.spanVolts() / (1 << window.record().bits());
    float[] volts = new float[codes.length];
    for (int i = 0; i < volts.length; i++) {
      volts[i] = (float) (range.lowestVolts() + codes[i] * step);
    }
    if (faults.has(ScopeQuirk.HOLE_IN_RECORD)) {
      volts[volts.length / 2] = NOT_A_NUMBER;
    }
    return volts;
  }

  private byte[] floats(float[] volts) {
    ByteBuffer block = ByteBuffer.allocate(volts.length * Float.BYTES).order(order);
    block.asFloatBuffer().put(volts);
    return block.array();
  }

  private static byte[] text(float[] volts) {
    StringBuilder text = new StringBuilder();
    for (float one : volts) {
      text.append(text.isEmpty() ? "" : ",").append(Nr3.of(one));
    }
    return text.toString().getBytes(StandardCharsets.US_ASCII);
  }
}
