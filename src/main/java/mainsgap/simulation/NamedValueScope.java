package mainsgap.simulation;

import org.jspecify.annotations.Nullable;

/**
 * The dialect of a bench scope that names the values of its preamble and sends a curve. Its answers
 * begin with their headers while those are switched on. The instrument that speaks it lets one
 * message in at a time.
 */
final class NamedValueScope implements Instrument.Dialect {
  private static final int CHANNELS = ScopePanel.CHANNELS;
  private static final int VERTICAL_DIVISIONS = 10;
  private static final int HORIZONTAL_DIVISIONS = 10;

  private final ScopeCore core;
  private final FaultSwitch faults;
  private final String serial;
  private final ScopePanel panel;
  private final CurveCommands curve;
  private double preTriggerPercent;
  private boolean stopsAfterOne;
  private @Nullable HeadedTable answers;

  NamedValueScope(ScopeCore core, FaultSwitch faults, String serial) {
    this.core = core;
    this.faults = faults;
    this.serial = serial;
    this.panel = new ScopePanel(core, faults, true);
    this.curve = new CurveCommands(core, faults);
    setDefaults();
  }

  @Override
  public String identity() {
    return "Mainsgap,Simulated curve scope," + serial + ",1.0";
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
    HeadedTable headed = new HeadedTable(table);
    answers = headed;
    table.command("HEADer", call -> headed.setHeaded(call.onOrOff()));
    headed.query("HEADer?", call -> Reply.number(headed.isHeaded() ? 1 : 0));
    addChannels(table, headed);
    addRecord(table, headed);
    addTrigger(table, headed);
    curve.addTo(table, headed);
  }

  private void addChannels(CommandTable table, HeadedTable headed) {
    table
        .command("SELect:CH#", CHANNELS, Call::onOrOff)
        .command("CH#:COUPling", CHANNELS, call -> call.oneOf("DC"))
        .command("CH#:PRObe", CHANNELS, panel::setProbe)
        .command("CH#:SCAle", CHANNELS, call -> panel.setSpan(call, VERTICAL_DIVISIONS))
        .command("CH#:OFFSet", CHANNELS, call -> panel.setMiddle(call, 1));
    headed
        .query("CH#:PRObe?", CHANNELS, call -> faults.number(panel.probeFactor(call)))
        .query(
            "CH#:SCAle?",
            CHANNELS,
            call -> faults.number(panel.spanVolts(call.suffix()) / VERTICAL_DIVISIONS));
  }

  private void addRecord(CommandTable table, HeadedTable headed) {
    table
        .command(
            "HORizontal:RECOrdlength",
            call -> panel.points = call.whole(100, ScopePanel.MOST_POINTS))
        .command(
            "HORizontal:SCAle",
            call -> panel.durationSeconds = call.number(1e-9, 100) * HORIZONTAL_DIVISIONS)
        .command("HORizontal:POSition", call -> preTriggerPercent = call.number(0, 100))
        .command("ACQuire:STOPAfter", call -> stopsAfterOne = isOne(call))
        .command("ACQuire:STATE", this::runOrStop);
    headed
        .query("HORizontal:RECOrdlength?", call -> faults.number(panel.points))
        .query("HORizontal:SAMPLERate?", call -> faults.number(1 / panel.intervalSeconds()))
        .query("ACQuire:STATE?", call -> faults.number(isRunning() ? 1 : 0))
        .query("ACQuire:NUMACq?", call -> faults.number(core.record().isPresent() ? 1 : 0))
        .query("TRIGger:STATE?", call -> Reply.text(state()));
  }

  private void addTrigger(CommandTable table, HeadedTable headed) {
    table
        .command("TRIGger", this::force)
        .command(
            "TRIGger:A:TYPe",
            call -> panel.waitsForTimeOut = call.oneOf("EDGE", "TIMEO", "TIMEOUT").startsWith("T"))
        .command(
            "TRIGger:A:SOUrce", call -> panel.triggerChannel = call.numberAfter("CH", CHANNELS))
        .command(
            "TRIGger:A:LEVel",
            call ->
                panel.levelVolts =
                    call.number(-ScopePanel.LEVEL_REACH_VOLTS, ScopePanel.LEVEL_REACH_VOLTS))
        .command("TRIGger:A:TIMEOut:TIMe", call -> panel.timeOutSeconds = call.number(1e-8, 10));
    headed
        .query("TRIGger:A:TYPe?", call -> Reply.text(panel.waitsForTimeOut ? "TIMEO" : "EDGE"))
        .query("TRIGger:A:LEVel?", call -> faults.number(panel.levelVolts))
        .query("TRIGger:A:TIMEOut:TIMe?", call -> faults.number(panel.timeOutSeconds));
  }

  private void setDefaults() {
    panel.setDefaults();
    curve.setDefaults();
    preTriggerPercent = 0;
    stopsAfterOne = false;
    if (answers != null) {
      answers.setHeaded(true);
    }
  }

  private static boolean isOne(Call call) {
    return call.oneOf("SEQ", "SEQUENCE", "RUNST", "RUNSTOP").startsWith("SEQ");
  }

  private void runOrStop(Call call) {
    String word = call.oneOf("RUN", "ON", "1", "STOP", "OFF", "0");
    if (word.equals("STOP") || word.equals("OFF") || word.equals("0")) {
      core.stop();
    } else {
      double first = -preTriggerPercent / 100 * panel.durationSeconds;
      panel.start(first, stopsAfterOne ? panel.trigger() : null);
    }
  }

  private void force(Call call) {
    if (call.oneOf("FORC", "FORCE").startsWith("FORC")) {
      core.force();
    }
  }

  private boolean isRunning() {
    ScopeCore.Stage stage = core.shownStage();
    return stage != ScopeCore.Stage.IDLE && stage != ScopeCore.Stage.COMPLETE;
  }

  private String state() {
    return switch (core.shownStage()) {
      case FILLING -> "ARMED";
      case WATCHING -> "READY";
      case RECORDING -> "TRIGGER";
      case IDLE, COMPLETE -> "SAVE";
    };
  }
}
