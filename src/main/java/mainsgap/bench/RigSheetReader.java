package mainsgap.bench;

import java.nio.file.Path;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalDouble;
import mainsgap.link.LinkException;
import mainsgap.link.ResourceName;
import mainsgap.settings.SettingsFile;
import mainsgap.settings.SettingsTable;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.Event;
import org.jspecify.annotations.Nullable;

/** The one reader of rig files. */
final class RigSheetReader {
  static final double LARGEST_VOLTS = 1000;
  static final double LONGEST_SETTLE_SECONDS = 3600;
  private static final int HIGHEST_SEED = 1_000_000_000;

  private final SettingsFile file;
  private final SettingsTable root;
  private final SettingsTable wired;
  private final @Nullable SettingsTable supply;

  private RigSheetReader(SettingsFile file) {
    this.file = file;
    this.root =
        file.root(
            "instrument",
            "unit",
            "claim",
            "supply",
            "series",
            "channels",
            "external-input",
            "mains-switch",
            "load",
            "conditions");
    this.wired = root.table("channels", "output", "mains", "second-leg", "load-current", "marker");
    this.supply =
        root.optionalTable(
                "supply",
                "nominal-volts",
                "frequency-hertz",
                "line-to-earth-volts",
                "settle-seconds",
                "longest-check-seconds")
            .orElse(null);
  }

  /** Opens the file. */
  static RigSheetReader of(Path file) {
    return new RigSheetReader(SettingsFile.readFile(file));
  }

  /** The whole file. */
  SettingsTable root() {
    return root;
  }

  /** The table of the channels. */
  SettingsTable wired() {
    return wired;
  }

  /** The table of the supply, where it is there. */
  @Nullable SettingsTable supply() {
    return supply;
  }

  /** The table of a role that sees a supply. */
  SettingsTable channel(ChannelRole role) {
    return wired.table(key(role), ProbedChannel.KEYS);
  }

  /** What the file says. */
  RigSheet sheet() {
    return new RigSheet(
        instrument(),
        root.optionalTable("unit", "name", "serial", "firmware")
            .map(
                table ->
                    new RigSheet.Unit(
                        text(table, "name"), text(table, "serial"), text(table, "firmware")))
            .orElse(new RigSheet.Unit(null, null, null)),
        root.optionalTable("claim", ClaimTable.KEYS).map(ClaimTable::read).orElse(null),
        new RigSheet.Supply(
            number(supply, "nominal-volts", 1, LARGEST_VOLTS),
            number(supply, "frequency-hertz", 40, 70),
            number(supply, "line-to-earth-volts", 1, LARGEST_VOLTS),
            number(supply, "settle-seconds", 0, LONGEST_SETTLE_SECONDS),
            number(supply, "longest-check-seconds", 0, LONGEST_SETTLE_SECONDS)),
        channels(),
        wired
            .optionalTable("load-current", ClampedChannel.KEYS)
            .map(ClampedChannel::read)
            .orElse(null),
        wish(),
        root.optionalTable("load", "description")
            .map(table -> table.text("description"))
            .orElse(null),
        conditions(),
        kept());
  }

  private RigSheet.Instrument instrument() {
    SettingsTable table =
        root.optionalTable("instrument", "resource", "simulated", "seed", "profile").orElse(null);
    if (table == null) {
      return new RigSheet.Instrument(null, null, null, null);
    }
    if (table.has("resource") && table.has("simulated")) {
      throw table.complaint(
          "simulated", "stands beside 'resource': a series runs on one of the two");
    }
    if (table.has("seed") && !table.has("simulated")) {
      throw table.complaint("seed", "belongs to 'simulated': a real instrument has no seed");
    }
    String simulated = text(table, "simulated");
    if (simulated != null && !SimulatedUnits.names().contains(simulated)) {
      throw table.complaint(
          "simulated",
          "is '" + simulated + "'; allowed: " + String.join(", ", SimulatedUnits.names()));
    }
    return new RigSheet.Instrument(
        resource(table),
        simulated,
        table.has("seed") ? (Integer) table.whole("seed", 0, HIGHEST_SEED) : null,
        text(table, "profile"));
  }

  private static @Nullable String resource(SettingsTable table) {
    String resource = text(table, "resource");
    if (resource != null) {
      try {
        ResourceName unused = ResourceName.parse(resource);
      } catch (LinkException e) {
        throw table.complaint("resource", "cannot be used: " + e.getMessage());
      }
    }
    return resource;
  }

  private Map<ChannelRole, ProbedChannel> channels() {
    Map<ChannelRole, ProbedChannel> channels = new EnumMap<>(ChannelRole.class);
    channels.put(ChannelRole.OUTPUT, ProbedChannel.read(channel(ChannelRole.OUTPUT)));
    for (ChannelRole role : new ChannelRole[] {ChannelRole.MAINS, ChannelRole.SECOND_LEG}) {
      if (wired.has(key(role))) {
        channels.put(role, ProbedChannel.read(channel(role)));
      }
    }
    return channels;
  }

  private RigSheet.Wish wish() {
    SettingsTable table = root.optionalTable("series", "trials", "event", "catch").orElse(null);
    if (table == null) {
      return new RigSheet.Wish(null, null, null);
    }
    return new RigSheet.Wish(
        table.has("trials") ? (Integer) table.whole("trials", 1, SeriesPlan.MOST_TRIALS) : null,
        table.has("event") ? table.choice("event", Event.class) : null,
        table.has("catch") ? catching(table) : null);
  }

  private static CatchWish catching(SettingsTable table) {
    String word = table.text("catch");
    return CatchWish.ofWord(word)
        .orElseThrow(
            () ->
                table.complaint(
                    "catch",
                    "is '" + word + "'; allowed: " + String.join(", ", CatchWish.allWords())));
  }

  private Map<String, String> conditions() {
    Map<String, String> conditions = new LinkedHashMap<>();
    if (root.has("conditions")) {
      SettingsTable table = root.openTable("conditions");
      table.keys().forEach(key -> conditions.put(key, table.text(key)));
    }
    return conditions;
  }

  private RigSheet.Kept kept() {
    SettingsTable commanded = root.optionalTable("mains-switch", RigSwitch.KEYS).orElse(null);
    return new RigSheet.Kept(
        file.block("mains-switch"),
        file.block("channels", "marker"),
        file.block("external-input"),
        commanded == null ? RigSheet.Kept.NONE.switchWords() : RigSwitch.wordsOf(commanded),
        commanded != null && commanded.has("relay"));
  }

  static String key(ChannelRole role) {
    return role.words().replace(' ', '-');
  }

  private static @Nullable String text(SettingsTable table, String key) {
    return table.optionalText(key).orElse(null);
  }

  private static @Nullable Double number(
      @Nullable SettingsTable table, String key, double least, double most) {
    OptionalDouble found =
        table == null ? OptionalDouble.empty() : table.optionalNumber(key, least, most);
    return found.isPresent() ? found.getAsDouble() : null;
  }
}
