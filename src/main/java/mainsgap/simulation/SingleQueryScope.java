package mainsgap.simulation;

import java.time.Duration;
import mainsgap.waiting.Clock;
import mainsgap.waiting.Deadline;

/**
 * The dialect of a bench scope without a preamble: what its inverted bytes mean is asked singly, in
 * volts behind the probe. Registers tell its state, each reading clearing them, and it copies a
 * part of its memory before it hands it out. The instrument that speaks it lets one message in at a
 * time.
 */
final class SingleQueryScope implements Instrument.Dialect {
  private static final int CHANNELS = ScopePanel.CHANNELS;
  private static final int DIVISIONS = 10;
  private static final int MOST_POINTS_AT_ONCE = 250_000;
  private static final int RUNNING = 1 << 3;
  private static final Duration COPYING = Duration.ofMillis(20);

  private final ScopeCore core;
  private final FaultSwitch faults;
  private final String serial;
  private final ScopePanel panel;
  private final RecordWindow window;
  private final Clock clock;
  private double centreSeconds;
  private int channel;
  private boolean armedTold;
  private boolean triggerTold;
  private Deadline copied;
  private boolean copyAsked;

  SingleQueryScope(ScopeCore core, FaultSwitch faults, String serial, Clock clock) {
    this.core = core;
    this.faults = faults;
    this.serial = serial;
    this.panel = new ScopePanel(core, faults, false);
    this.window = new RecordWindow(core, MOST_POINTS_AT_ONCE);
    this.clock = clock;
    this.copied = Deadline.after(Duration.ZERO, clock);
    setDefaults();
  }

  @Override
  public String identity() {
    return "Mainsgap,Simulated register scope," + serial + ",1.0";
  }

  @Override
  public void reset() {
    core.stop();
    setDefaults();
  }

  /** Run and stop are sequential here: nothing is ever pending. */
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
        .command("SINGle", call -> start())
        .command("TFORce", call -> core.force())
        .query("OPERegister:CONDition?", call -> faults.number(isRunning() ? RUNNING : 0))
        .query("AER?", call -> faults.number(armedEvent() ? 1 : 0))
        .query("TER?", call -> faults.number(triggerEvent() ? 1 : 0));
    addChannels(table);
    addRecord(table);
    addData(table);
  }

  private void addChannels(CommandTable table) {
    table
        .command("CHANnel#:DISPlay", CHANNELS, Call::onOrOff)
        .command("CHANnel#:COUPling", CHANNELS, call -> call.oneOf("DC"))
        .command("CHANnel#:SCALe", CHANNELS, call -> panel.setSpan(call, DIVISIONS))
        .query(
            "CHANnel#:SCALe?",
            CHANNELS,
            call -> faults.number(panel.spanVolts(call.suffix()) / DIVISIONS))
        .command("CHANnel#:OFFSet", CHANNELS, call -> panel.setMiddle(call, -1))
        .query(
            "CHANnel#:OFFSet?", CHANNELS, call -> faults.number(-panel.middleVolts(call.suffix())))
        .command(
            "TRIGger:EDGE:SOURce",
            call -> panel.triggerChannel = call.numberAfter("CHAN", CHANNELS))
        .command("TRIGger:EDGE:LEVel", call -> panel.levelVolts = call.number(-1000, 1000));
  }

  private void addRecord(CommandTable table) {
    table
        .command(
            "TIMebase:SCALe", call -> panel.durationSeconds = call.number(1e-9, 100) * DIVISIONS)
        .command("TIMebase:OFFSet", call -> centreSeconds = call.number(-1000, 1000))
        .command("ACQuire:MDEPth", call -> panel.points = call.whole(100, ScopePanel.MOST_POINTS))
        .query("ACQuire:MDEPth?", call -> faults.number(panel.points))
        .query("ACQuire:SRATe?", call -> faults.number(1 / panel.intervalSeconds()));
  }

  private void addData(CommandTable table) {
    table
        .command("WAVeform:SOURce", call -> channel = call.numberAfter("CHAN", CHANNELS))
        .command("WAVeform:STARt", call -> window.setFirst(call.whole(1, ScopePanel.MOST_POINTS)))
        .command("WAVeform:STOP", call -> window.setLast(call.whole(1, ScopePanel.MOST_POINTS)))
        .command("WAVeform:BEGin", call -> beginCopy())
        .query("WAVeform:STATus?", call -> Reply.text(copyState()))
        .query("WAVeform:POINts?", call -> faults.number(window.points()))
        .query("WAVeform:XINCrement?", call -> faults.number(plan().intervalSeconds()))
        .query("WAVeform:XORigin?", call -> faults.number(plan().firstSampleSeconds()))
        .query("WAVeform:DATA?", call -> Reply.block(codes()));
  }

  private void setDefaults() {
    panel.setDefaults();
    window.setDefaults();
    centreSeconds = 0;
    channel = 1;
    armedTold = true;
    triggerTold = true;
    copyAsked = false;
  }

  private void start() {
    panel.start(centreSeconds - panel.durationSeconds / 2, panel.trigger());
    armedTold = false;
    triggerTold = false;
  }

  private boolean isRunning() {
    ScopeCore.Stage stage = core.shownStage();
    return stage != ScopeCore.Stage.IDLE && stage != ScopeCore.Stage.COMPLETE;
  }

  /** Once after each start, from the moment at which it waits for the trigger. */
  private boolean armedEvent() {
    ScopeCore.Stage stage = core.stage();
    boolean event = !armedTold && stage != ScopeCore.Stage.FILLING && stage != ScopeCore.Stage.IDLE;
    armedTold |= event;
    return event;
  }

  /** Once after each start, from the trigger on. */
  private boolean triggerEvent() {
    ScopeCore.Stage stage = core.stage();
    boolean event =
        !triggerTold && (stage == ScopeCore.Stage.RECORDING || stage == ScopeCore.Stage.COMPLETE);
    triggerTold |= event;
    return event;
  }

  private RecordPlan plan() {
    return window.record().plan();
  }

  private void beginCopy() {
    copyAsked = true;
    copied = Deadline.after(COPYING, clock);
  }

  private String copyState() {
    if (!copied.hasPassed()) {
      return "READ,0";
    }
    return "IDLE," + (core.record().isPresent() ? window.points() : 0);
  }

  /** Bytes count downwards: 128 is the middle of the range, 0 its upper end. */
  private byte[] codes() {
    if (!copyAsked || !copied.hasPassed()) {
      throw new ScpiFault(ScpiError.DATA_STALE);
    }
    copyAsked = false;
    short[] taken = window.codes(channel);
    byte[] block = new byte[taken.length];
    for (int i = 0; i < block.length; i++) {
      int upward = WaveformCommands.narrowed(taken[i], window.record().bits());
      block[i] = (byte) Math.min(255, 256 - upward);
    }
    if (faults.has(ScopeQuirk.HOLE_IN_RECORD)) {
      block[block.length / 2] = 0;
    }
    return block;
  }
}
