package mainsgap.bench;

import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import mainsgap.arming.ClosedBy;
import mainsgap.arming.CommandedSwitch;
import mainsgap.arming.RelayFile;
import mainsgap.arming.ScpiOutput;
import mainsgap.arming.ScpiOutputCommands;
import mainsgap.arming.SerialRelay;
import mainsgap.arming.SwitchLine;
import mainsgap.link.LinkException;
import mainsgap.link.ResourceName;
import mainsgap.settings.SettingsTable;
import mainsgap.waiting.Clock;
import org.jspecify.annotations.Nullable;

/**
 * The commanded mains switch of a rig, as its owner wrote it down.
 *
 * @param kind what is commanded
 * @param resource where it is
 * @param closedBy the program, on a word or by itself
 * @param emergencyStop where the hardware emergency stop is
 * @param output the commands of an AC source; null for a relay
 * @param relay the messages of a relay; null for an AC source
 */
record RigSwitch(
    Kind kind,
    ResourceName resource,
    ClosedBy closedBy,
    String emergencyStop,
    @Nullable ScpiOutputCommands output,
    @Nullable RelayFile relay) {
  static final String[] KEYS = {
    "kind",
    "resource",
    "emergency-stop",
    "restores-by-itself",
    "open",
    "close",
    "position",
    "open-at-angle",
    "relay"
  };

  private static final List<String> OF_A_COMMANDED_SWITCH =
      List.of("resource", "emergency-stop", "restores-by-itself");
  private static final List<String> OF_AN_OUTPUT =
      List.of("open", "close", "position", "open-at-angle");

  /** What moves the mains switch. */
  enum Kind {
    BY_HAND,
    SCPI_OUTPUT,
    SERIAL_RELAY;

    String word() {
      return Words.hyphened(this);
    }
  }

  /** Reads the table; null where a hand moves the switch. A relay's file lies in {@code folder}. */
  static @Nullable RigSwitch read(SettingsTable table, Path folder) {
    Kind kind = table.choice("kind", Kind.class);
    if (kind != Kind.SCPI_OUTPUT) {
      OF_AN_OUTPUT.forEach(key -> refuse(table, key, Kind.SCPI_OUTPUT, kind));
    }
    if (kind != Kind.SERIAL_RELAY) {
      refuse(table, "relay", Kind.SERIAL_RELAY, kind);
    }
    if (kind == Kind.BY_HAND) {
      OF_A_COMMANDED_SWITCH.forEach(key -> refuse(table, key, null, kind));
      return null;
    }
    return new RigSwitch(
        kind,
        resource(table),
        table.flag("restores-by-itself", false) ? ClosedBy.PROGRAM : ClosedBy.PROGRAM_ON_A_WORD,
        table.text("emergency-stop"),
        kind == Kind.SCPI_OUTPUT ? commands(table) : null,
        kind == Kind.SERIAL_RELAY ? RelayFile.read(folder, table.text("relay")) : null);
  }

  /** Whether it can be told at which angle to open. */
  boolean choosesAngle() {
    return line(Clock.system()).choosesAngle();
  }

  /** The switch; nothing is opened yet. */
  CommandedSwitch commanded(Clock clock) {
    return new CommandedSwitch(line(clock), closedBy, emergencyStop, clock);
  }

  /** The switch in words, for the session and for people. */
  String words() {
    return what(kind)
        + " at "
        + resource
        + ", emergency stop: "
        + emergencyStop
        + (closedBy == ClosedBy.PROGRAM
            ? "; closes by itself, as the rig's owner allows"
            : "; closes on a person's word");
  }

  /** What moves the switch, as the table says; nothing it names is looked at. */
  static String wordsOf(SettingsTable table) {
    Kind kind = table.choice("kind", Kind.class);
    return kind == Kind.BY_HAND
        ? "by hand"
        : what(kind)
            + " at "
            + table.text("resource")
            + ", emergency stop: "
            + table.text("emergency-stop");
  }

  private static String what(Kind kind) {
    return kind == Kind.SCPI_OUTPUT ? "output of the AC source" : "serial relay";
  }

  private SwitchLine line(Clock clock) {
    return switch (kind) {
      case SCPI_OUTPUT -> new ScpiOutput(resource, Objects.requireNonNull(output), clock);
      case SERIAL_RELAY -> new SerialRelay(resource, Objects.requireNonNull(relay), clock);
      case BY_HAND -> throw new IllegalStateException("a hand has no line");
    };
  }

  private static ResourceName resource(SettingsTable table) {
    try {
      return ResourceName.parse(table.text("resource"));
    } catch (LinkException e) {
      throw table.complaint("resource", "cannot be used: " + e.getMessage());
    }
  }

  private static ScpiOutputCommands commands(SettingsTable table) {
    ScpiOutputCommands standard = ScpiOutputCommands.STANDARD;
    try {
      return new ScpiOutputCommands(
          table.optionalText("open").orElse(standard.open()),
          table.optionalText("close").orElse(standard.close()),
          table.optionalText("position").orElse(standard.position()),
          table.texts("open-at-angle"));
    } catch (IllegalArgumentException e) {
      throw table.complaint(
          "open-at-angle", "cannot be used: " + e.getMessage() + " where the degrees belong");
    }
  }

  private static void refuse(SettingsTable table, String key, @Nullable Kind owner, Kind found) {
    if (table.has(key)) {
      throw table.complaint(
          key,
          "belongs to "
              + (owner == null ? "a commanded switch" : "kind = \"" + owner.word() + "\"")
              + ", but kind is \""
              + found.word()
              + "\": take one of them out");
    }
  }
}
