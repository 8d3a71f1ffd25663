package mainsgap.scope;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.regex.PatternSyntaxException;
import java.util.stream.Collectors;
import mainsgap.scope.InstrumentProfile.Conventions;
import mainsgap.settings.SettingsTable;

/** Reads command templates; each complaint names file, line and key. */
final class TemplateReader {
  static final Set<Placeholder> VERTICAL =
      EnumSet.of(
          Placeholder.CHANNEL,
          Placeholder.PROBE_FACTOR,
          Placeholder.PEAK_VOLTS,
          Placeholder.PEAK_TO_PEAK_VOLTS,
          Placeholder.VOLTS_PER_DIVISION);
  static final Set<Placeholder> HORIZONTAL =
      EnumSet.range(Placeholder.SAMPLES, Placeholder.PRE_TRIGGER_PERCENT);
  static final Set<Placeholder> PART =
      EnumSet.of(Placeholder.CHANNEL, Placeholder.FIRST, Placeholder.LAST);

  private final Conventions conventions;

  TemplateReader(Conventions conventions) {
    this.conventions = conventions;
  }

  Conventions conventions() {
    return conventions;
  }

  /** A regular expression, capitals and small letters alike. */
  static Pattern pattern(SettingsTable table, String key) {
    try {
      return Pattern.compile(table.text(key), Pattern.CASE_INSENSITIVE);
    } catch (PatternSyntaxException e) {
      throw table.complaint(key, "is not a regular expression: " + e.getDescription());
    }
  }

  /** Commands without a reply; none where the key is not there. */
  List<CommandTemplate> commands(SettingsTable table, String key, Set<Placeholder> allowed) {
    List<CommandTemplate> commands = new ArrayList<>();
    for (String text : table.texts(key)) {
      CommandTemplate command = template(table, key, text, allowed);
      if (command.isQuery()) {
        throw table.complaint(key, "has the query " + text + ": only commands without a reply");
      }
      commands.add(command);
    }
    return List.copyOf(commands);
  }

  List<CommandTemplate> atLeastOne(SettingsTable table, String key, Set<Placeholder> allowed) {
    List<CommandTemplate> commands = commands(table, key, allowed);
    if (commands.isEmpty()) {
      throw table.complaint(key, "has no command: write at least one");
    }
    return commands;
  }

  Optional<CommandTemplate> optionalQuery(
      SettingsTable table, String key, Set<Placeholder> allowed) {
    return table.has(key) ? Optional.of(query(table, key, allowed)) : Optional.empty();
  }

  /** A query that is asked while an acquisition may run: none that waits for its end. */
  CommandTemplate poll(SettingsTable table, String key, Set<Placeholder> allowed) {
    CommandTemplate query = query(table, key, allowed);
    if (query.toString().toUpperCase(Locale.ROOT).contains("*OPC?")) {
      throw table.complaint(
          key,
          "is *OPC?, which answers at once or blocks the instrument until the trigger comes: put"
              + " *OPC at the end of 'commands.arm' and ask *ESR? for bit 0");
    }
    return query;
  }

  CommandTemplate query(SettingsTable table, String key, Set<Placeholder> allowed) {
    CommandTemplate query = template(table, key, table.text(key), allowed);
    if (!query.isQuery()) {
      throw table.complaint(key, "has no question mark: write a query");
    }
    return query;
  }

  /** One of {@code quantities} by its placeholder's name. */
  Placeholder quantity(SettingsTable table, String key, List<Placeholder> quantities) {
    String name = table.text(key);
    Optional<Placeholder> found =
        quantities.stream().filter(one -> one.spelt().equals(name)).findFirst();
    if (found.isEmpty()) {
      throw table.complaint(
          key,
          "is '"
              + name
              + "'; allowed: "
              + quantities.stream().map(Placeholder::spelt).collect(Collectors.joining(", ")));
    }
    checkDivisions(table, key, found.get());
    return found.get();
  }

  private CommandTemplate template(
      SettingsTable table, String key, String text, Set<Placeholder> allowed) {
    CommandTemplate template;
    try {
      template = CommandTemplate.of(text, allowed).from(table.dotted(key));
    } catch (IllegalArgumentException e) {
      throw table.complaint(key, e.getMessage() + ", in " + text);
    }
    template.placeholders().forEach(one -> checkDivisions(table, key, one));
    return template;
  }

  private void checkDivisions(SettingsTable table, String key, Placeholder placeholder) {
    if (placeholder == Placeholder.VOLTS_PER_DIVISION && conventions.verticalDivisions() == 0) {
      throw table.complaint(
          key, "counts in divisions: set 'conventions.vertical-divisions' to their number");
    }
    if (placeholder == Placeholder.SECONDS_PER_DIVISION && conventions.horizontalDivisions() == 0) {
      throw table.complaint(
          key, "counts in divisions: set 'conventions.horizontal-divisions' to their number");
    }
  }
}
