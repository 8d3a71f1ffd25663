package mainsgap.simulation;

import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import mainsgap.simulation.Trigger.Fires;

/** The trigger section of the ten-field scope: its kinds, each with settings of its own. */
final class TriggerPanel {
  private static final double LEVEL_REACH_VOLTS = 1e5;
  private static final double DEFAULT_SECONDS = 0.02;

  private final FaultSwitch faults;
  private final Map<Mode, Knobs> knobs = new EnumMap<>(Mode.class);
  private Mode mode = Mode.EDGE;

  /** The kinds; the constant is the word that chooses it. */
  private enum Mode {
    EDGE,
    TIM,
    DROP,
    PULS,
    INT,
    WIND
  }

  /** The settings of one kind. */
  private static final class Knobs {
    private int channel = 1;
    private double levelVolts;
    private double lowerVolts;
    private double seconds = DEFAULT_SECONDS;
    private boolean rising = true;
    private Fires fires = Fires.AT_END;
  }

  TriggerPanel(FaultSwitch faults) {
    this.faults = faults;
    setDefaults();
  }

  void setDefaults() {
    mode = Mode.EDGE;
    for (Mode each : Mode.values()) {
      knobs.put(each, new Knobs());
    }
  }

  /** What it waits for, as it is set. */
  Trigger trigger() {
    Knobs set = of(mode);
    return switch (mode) {
      case EDGE -> new Trigger.Edge(set.channel, set.levelVolts, set.rising);
      case TIM -> new Trigger.TimeOut(set.channel, set.levelVolts, set.seconds);
      case DROP -> new Trigger.Interval(set.channel, set.levelVolts, set.seconds, Fires.ON_TIME);
      case INT -> new Trigger.Interval(set.channel, set.levelVolts, set.seconds, Fires.AT_END);
      case PULS -> new Trigger.PulseWidth(set.channel, set.levelVolts, set.seconds, set.fires);
      case WIND ->
          new Trigger.Window(set.channel, set.lowerVolts, set.levelVolts, set.seconds, set.fires);
    };
  }

  void addTo(CommandTable table) {
    table
        .command(
            "TRIGger:MODE",
            call ->
                mode =
                    mode(
                        call.oneOf(
                            "EDGE",
                            "TIM",
                            "TIMEOUT",
                            "DROP",
                            "DROPOUT",
                            "PULS",
                            "PULSE",
                            "INT",
                            "INTERVAL",
                            "WIND",
                            "WINDOW")))
        .query("TRIGger:MODE?", call -> Reply.text(mode.name()));
    addSource(table, "TRIGger:EDGE", Mode.EDGE);
    addSlope(table, "TRIGger:EDGE", Mode.EDGE);
    addLevel(table, "TRIGger:EDGE:LEVel", Mode.EDGE);
    addTimed(table, "TRIGger:TIMeout", Mode.TIM, "WIDTh");
    addTimed(table, "TRIGger:DROPout", Mode.DROP, "TIME");
    addSlope(table, "TRIGger:DROPout", Mode.DROP);
    addTimed(table, "TRIGger:PULSe", Mode.PULS, "WIDTh");
    addFires(table, "TRIGger:PULSe", Mode.PULS);
    table.command("TRIGger:PULSe:POLarity", call -> call.oneOf("NEG", "NEGATIVE"));
    addTimed(table, "TRIGger:INTerval", Mode.INT, "TIME");
    addSlope(table, "TRIGger:INTerval", Mode.INT);
    addWindow(table);
  }

  private void addTimed(CommandTable table, String header, Mode of, String timeWord) {
    addSource(table, header, of);
    addLevel(table, header + ":LEVel", of);
    addTime(table, header + ":" + timeWord, of);
  }

  private void addWindow(CommandTable table) {
    addSource(table, "TRIGger:WINDow", Mode.WIND);
    addLevel(table, "TRIGger:WINDow:HIGH", Mode.WIND);
    table
        .command("TRIGger:WINDow:LOW", call -> of(Mode.WIND).lowerVolts = level(call))
        .query("TRIGger:WINDow:LOW?", call -> faults.number(of(Mode.WIND).lowerVolts));
    addTime(table, "TRIGger:WINDow:TIME", Mode.WIND);
    addFires(table, "TRIGger:WINDow", Mode.WIND);
  }

  private void addSource(CommandTable table, String header, Mode of) {
    table
        .command(header + ":SOURce", call -> of(of).channel = source(call, of))
        .query(header + ":SOURce?", call -> Reply.text(sourceWord(of(of).channel)));
  }

  private void addLevel(CommandTable table, String header, Mode of) {
    table
        .command(header, call -> of(of).levelVolts = level(call))
        .query(header + "?", call -> faults.number(of(of).levelVolts));
  }

  private void addTime(CommandTable table, String header, Mode of) {
    table
        .command(header, call -> of(of).seconds = call.number(1e-8, 10))
        .query(header + "?", call -> faults.number(of(of).seconds));
  }

  private void addSlope(CommandTable table, String header, Mode of) {
    table
        .command(
            header + ":SLOPe",
            call ->
                of(of).rising =
                    (of == Mode.EDGE
                            ? call.oneOf("POS", "POSITIVE", "NEG", "NEGATIVE")
                            : call.oneOf("POS", "POSITIVE"))
                        .startsWith("POS"))
        .query(header + ":SLOPe?", call -> Reply.text(of(of).rising ? "POS" : "NEG"));
  }

  private void addFires(CommandTable table, String header, Mode of) {
    table
        .command(
            header + ":FIRes",
            call ->
                of(of).fires =
                    call.oneOf("TIME", "END").equals("TIME") ? Fires.ON_TIME : Fires.AT_END)
        .query(
            header + ":FIRes?", call -> Reply.text(of(of).fires == Fires.ON_TIME ? "TIME" : "END"));
  }

  private Knobs of(Mode wanted) {
    Knobs found = knobs.get(wanted);
    if (found == null) {
      throw new AssertionError("every kind has its settings");
    }
    return found;
  }

  private static Mode mode(String word) {
    return word.startsWith("INT")
        ? Mode.INT
        : Mode.valueOf(word.substring(0, word.startsWith("TIM") ? 3 : 4));
  }

  private static int source(Call call, Mode of) {
    boolean external =
        of == Mode.EDGE && call.word().toUpperCase(Locale.ROOT).matches("EXT(ERNAL)?");
    return external ? ScopeRecord.EXTERNAL : call.numberAfter("CHAN", ScopeRecord.CHANNELS);
  }

  private static String sourceWord(int channel) {
    return channel == ScopeRecord.EXTERNAL ? "EXT" : "CHAN" + channel;
  }

  private static double level(Call call) {
    return call.number(-LEVEL_REACH_VOLTS, LEVEL_REACH_VOLTS);
  }
}
