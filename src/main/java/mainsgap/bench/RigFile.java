package mainsgap.bench;

import java.nio.file.Path;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import mainsgap.settings.SettingsFile;
import mainsgap.settings.SettingsTable;
import mainsgap.signal.ChannelRole;
import org.jspecify.annotations.Nullable;

/**
 * A rig as its owner wrote it down; null where the file does not say.
 *
 * @param channels what each role is connected to, the output among them
 * @param profile the instrument profile to use, where none is to be found by itself
 * @param unit the specimen's name
 * @param nominalVolts RMS
 * @param frequencyHertz nominal
 * @param settleSeconds how long the unit settles between trials
 * @param mainsSwitch the commanded mains switch; null where a hand moves it
 * @param signals small isolated signals that tell of the event
 * @param longestCheckSeconds how long the unit may check a mains that is back
 * @param conditions serial, firmware, load ... in the file's order
 */
record RigFile(
    Map<ChannelRole, ProbedChannel> channels,
    @Nullable String profile,
    @Nullable String unit,
    @Nullable Double nominalVolts,
    @Nullable Double frequencyHertz,
    @Nullable Double settleSeconds,
    @Nullable RigSwitch mainsSwitch,
    RigSignals signals,
    @Nullable Double longestCheckSeconds,
    Map<String, String> conditions) {
  private static final double LARGEST_VOLTS = 1000;
  private static final double LONGEST_SETTLE_SECONDS = 3600;

  /** Takes its own copies. */
  RigFile {
    EnumMap<ChannelRole, ProbedChannel> copy = new EnumMap<>(ChannelRole.class);
    copy.putAll(channels);
    channels = Collections.unmodifiableMap(copy);
    conditions = Collections.unmodifiableMap(new LinkedHashMap<>(conditions));
  }

  /**
   * Reads the file.
   *
   * @param otherNominalVolts what the user asks for, which goes before the file; or null
   * @param fallbackVolts where neither says
   * @throws mainsgap.settings.SettingsException with file, line and key if it cannot be used
   */
  static RigFile read(Path file, @Nullable Double otherNominalVolts, double fallbackVolts) {
    SettingsTable root =
        SettingsFile.readFile(file)
            .root(
                "instrument",
                "unit",
                "supply",
                "channels",
                "external-input",
                "mains-switch",
                "load",
                "conditions");
    SettingsTable supply =
        root.optionalTable(
                "supply",
                "nominal-volts",
                "frequency-hertz",
                "line-to-earth-volts",
                "settle-seconds",
                "longest-check-seconds")
            .orElse(null);
    Double nominal = number(supply, "nominal-volts", 1, LARGEST_VOLTS);
    Double declared = number(supply, "line-to-earth-volts", 1, LARGEST_VOLTS);
    double line =
        otherNominalVolts != null ? otherNominalVolts : nominal != null ? nominal : fallbackVolts;
    if (supply != null && declared != null && declared < line / 2) {
      throw supply.complaint(
          "line-to-earth-volts",
          "is "
              + Words.plain(declared)
              + " V, but of two conductors with "
              + Words.plain(line)
              + " V between them one has at least half of it to earth: write the larger one's");
    }
    SettingsTable wired = root.table("channels", "output", "mains", "marker");
    Map<ChannelRole, ProbedChannel> channels = channels(wired, declared == null ? line : declared);
    return new RigFile(
        channels,
        root.optionalTable("instrument", "profile")
            .flatMap(table -> table.optionalText("profile"))
            .orElse(null),
        unitText(root, "name"),
        nominal,
        number(supply, "frequency-hertz", 40, 70),
        number(supply, "settle-seconds", 0, LONGEST_SETTLE_SECONDS),
        root.optionalTable("mains-switch", RigSwitch.KEYS)
            .map(table -> RigSwitch.read(table, folderOf(file)))
            .orElse(null),
        RigSignals.read(
            root,
            wired,
            channels.values().stream().map(ProbedChannel::number).collect(Collectors.toSet())),
        number(supply, "longest-check-seconds", 0, LONGEST_SETTLE_SECONDS),
        conditions(root));
  }

  private static Map<ChannelRole, ProbedChannel> channels(
      SettingsTable table, double toEarthVolts) {
    Map<ChannelRole, ProbedChannel> channels = new EnumMap<>(ChannelRole.class);
    channels.put(
        ChannelRole.OUTPUT,
        ProbedChannel.read(table.table("output", ProbedChannel.KEYS), toEarthVolts));
    table
        .optionalTable("mains", ProbedChannel.KEYS)
        .ifPresent(
            mains -> {
              ProbedChannel read = ProbedChannel.read(mains, toEarthVolts);
              if (read.number() == channels.get(ChannelRole.OUTPUT).number()) {
                throw mains.complaint(
                    "number",
                    "is " + read.number() + ", which is the output's: connect mains to another");
              }
              channels.put(ChannelRole.MAINS, read);
            });
    return channels;
  }

  private static Path folderOf(Path file) {
    Path folder = file.toAbsolutePath().getParent();
    return folder == null ? file.toAbsolutePath() : folder;
  }

  private static Map<String, String> conditions(SettingsTable root) {
    Map<String, String> conditions = new LinkedHashMap<>();
    for (String key : new String[] {"serial", "firmware"}) {
      String text = unitText(root, key);
      if (text != null) {
        conditions.put(key, text);
      }
    }
    root.optionalTable("load", "description")
        .ifPresent(load -> conditions.put("load", load.text("description")));
    if (root.has("conditions")) {
      SettingsTable more = root.openTable("conditions");
      more.keys().forEach(key -> conditions.put(key.toLowerCase(Locale.ROOT), more.text(key)));
    }
    return conditions;
  }

  private static @Nullable String unitText(SettingsTable root, String key) {
    return root.optionalTable("unit", "name", "serial", "firmware")
        .flatMap(found -> found.optionalText(key))
        .orElse(null);
  }

  private static @Nullable Double number(
      @Nullable SettingsTable table, String key, double least, double most) {
    OptionalDouble found =
        table == null ? OptionalDouble.empty() : table.optionalNumber(key, least, most);
    return found.isPresent() ? found.getAsDouble() : null;
  }
}
