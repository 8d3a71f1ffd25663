package mainsgap.scope;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import mainsgap.settings.SettingsTable;

/** Reads the tables of a profile that say which triggers the family has. */
final class TriggerReader {
  private static final String COMMANDS = "commands";
  private static final String FIRES = "fires";

  private static final Set<Placeholder> FORCED =
      EnumSet.of(Placeholder.CHANNEL, Placeholder.UNREACHED_LEVEL_VOLTS);
  private static final Set<Placeholder> QUIET =
      EnumSet.of(Placeholder.CHANNEL, Placeholder.LEVEL_VOLTS, Placeholder.TIME_OUT_SECONDS);
  private static final Set<Placeholder> WINDOW =
      EnumSet.of(
          Placeholder.CHANNEL,
          Placeholder.UPPER_LEVEL_VOLTS,
          Placeholder.LOWER_LEVEL_VOLTS,
          Placeholder.TIME_OUT_SECONDS);
  private static final Set<Placeholder> EDGE =
      EnumSet.of(Placeholder.CHANNEL, Placeholder.LEVEL_VOLTS);
  private static final Set<Placeholder> EXTERNAL = EnumSet.of(Placeholder.LEVEL_VOLTS);

  private final TemplateReader templates;

  /** When a trigger that measures a time comes. */
  private enum Fires {
    ON_TIME,
    AT_END
  }

  TriggerReader(TemplateReader templates) {
    this.templates = templates;
  }

  /** The triggers of the profile {@code root}. */
  TriggerCommands read(SettingsTable root) {
    return root.optionalTable(
            "triggers",
            "forced",
            "time-out",
            "dropout",
            "pulse-width",
            "interval",
            "window",
            "edge",
            "external")
        .map(
            table ->
                new TriggerCommands(
                    forced(table),
                    quiet(table),
                    edge(table, "edge", EDGE),
                    edge(table, "external", EXTERNAL)))
        .orElseGet(() -> new TriggerCommands(List.of(), Map.of(), Map.of(), Map.of()));
  }

  private List<CommandTemplate> forced(SettingsTable table) {
    return table
        .optionalTable("forced", COMMANDS)
        .map(forced -> templates.atLeastOne(forced, COMMANDS, FORCED))
        .orElse(List.of());
  }

  private Map<CatchMethod, List<CommandTemplate>> quiet(SettingsTable table) {
    Map<CatchMethod, List<CommandTemplate>> quiet = new EnumMap<>(CatchMethod.class);
    add(quiet, CatchMethod.TIME_OUT_TRIGGER, alone(table, "time-out"));
    add(quiet, CatchMethod.DROPOUT_TRIGGER, alone(table, "dropout"));
    add(quiet, CatchMethod.PULSE_WIDTH_TRIGGER, onTime(table, "pulse-width", QUIET));
    add(quiet, CatchMethod.INTERVAL_TRIGGER, onTime(table, "interval", QUIET));
    add(quiet, CatchMethod.WINDOW_TRIGGER, onTime(table, "window", WINDOW));
    return quiet;
  }

  private static void add(
      Map<CatchMethod, List<CommandTemplate>> quiet,
      CatchMethod method,
      Optional<List<CommandTemplate>> commands) {
    commands.ifPresent(found -> quiet.put(method, found));
  }

  private Optional<List<CommandTemplate>> alone(SettingsTable table, String key) {
    return table
        .optionalTable(key, COMMANDS)
        .map(inner -> templates.atLeastOne(inner, COMMANDS, QUIET));
  }

  /** One that comes only when the pulse ends is checked too, but never used: it comes too late. */
  private Optional<List<CommandTemplate>> onTime(
      SettingsTable table, String key, Set<Placeholder> allowed) {
    return table
        .optionalTable(key, FIRES, COMMANDS)
        .flatMap(
            inner -> {
              Fires fires = inner.choice(FIRES, Fires.class);
              List<CommandTemplate> commands = templates.atLeastOne(inner, COMMANDS, allowed);
              return fires == Fires.ON_TIME ? Optional.of(commands) : Optional.empty();
            });
  }

  private Map<Slope, List<CommandTemplate>> edge(
      SettingsTable table, String key, Set<Placeholder> allowed) {
    return table
        .optionalTable(key, "rising", "falling")
        .map(
            inner ->
                Map.of(
                    Slope.RISING, templates.atLeastOne(inner, "rising", allowed),
                    Slope.FALLING, templates.atLeastOne(inner, "falling", allowed)))
        .orElse(Map.of());
  }
}
