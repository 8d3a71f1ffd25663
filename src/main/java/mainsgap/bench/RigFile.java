package mainsgap.bench;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import mainsgap.settings.SettingsTable;
import mainsgap.signal.ChannelRole;
import org.jspecify.annotations.Nullable;

/**
 * A rig that a series can run on: a rig file whose probes stand the line, with all that it names.
 *
 * @param sheet what its owner wrote
 * @param mainsSwitch the commanded mains switch; null where a hand moves it
 * @param signals small isolated signals that tell of the event
 */
record RigFile(RigSheet sheet, @Nullable RigSwitch mainsSwitch, RigSignals signals) {

  /**
   * Reads the file.
   *
   * @param otherNominalVolts what the user asks for, which goes before the file; or null
   * @param fallbackVolts where neither says
   * @throws mainsgap.settings.SettingsException with file, line and key if it cannot be used
   */
  static RigFile read(Path file, @Nullable Double otherNominalVolts, double fallbackVolts) {
    RigSheetReader reader = RigSheetReader.of(file);
    RigSheet sheet = reader.sheet();
    double line =
        otherNominalVolts != null
            ? otherNominalVolts
            : sheet.supply().nominalVolts() != null ? sheet.supply().nominalVolts() : fallbackVolts;
    requireLineToEarth(reader, sheet, line);
    requireRatedProbes(reader, sheet, sheet.supply().lineToEarthVolts(), line);
    Map<Integer, ChannelRole> taken = requireOwnChannels(reader, sheet);
    return new RigFile(
        sheet,
        reader
            .root()
            .optionalTable("mains-switch", RigSwitch.KEYS)
            .map(table -> RigSwitch.read(table, folderOf(file)))
            .orElse(null),
        RigSignals.read(reader.root(), reader.wired(), taken.keySet()));
  }

  Map<ChannelRole, ProbedChannel> channels() {
    return sheet.channels();
  }

  @Nullable String profile() {
    return sheet.instrument().profile();
  }

  @Nullable String unit() {
    return sheet.unit().name();
  }

  @Nullable Double nominalVolts() {
    return sheet.supply().nominalVolts();
  }

  @Nullable Double frequencyHertz() {
    return sheet.supply().frequencyHertz();
  }

  @Nullable Double settleSeconds() {
    return sheet.supply().settleSeconds();
  }

  @Nullable Double longestCheckSeconds() {
    return sheet.supply().longestCheckSeconds();
  }

  /** Serial, firmware, load and the owner's own conditions, for the session. */
  Map<String, String> conditions() {
    Map<String, String> conditions = new LinkedHashMap<>();
    putIfThere(conditions, "serial", sheet.unit().serial());
    putIfThere(conditions, "firmware", sheet.unit().firmware());
    putIfThere(conditions, "load", sheet.load());
    sheet.conditions().forEach((key, text) -> conditions.put(key.toLowerCase(Locale.ROOT), text));
    return conditions;
  }

  private static void putIfThere(Map<String, String> words, String key, @Nullable String text) {
    if (text != null) {
      words.put(key, text);
    }
  }

  private static void requireLineToEarth(RigSheetReader reader, RigSheet sheet, double line) {
    SettingsTable supply = reader.supply();
    Double declared = sheet.supply().lineToEarthVolts();
    if (supply != null && declared != null && declared < line / 2) {
      throw supply.complaint(
          "line-to-earth-volts",
          "is "
              + Words.plain(declared)
              + " V, but of two conductors with "
              + Words.plain(line)
              + " V between them one has at least half of it to earth: write the larger one's");
    }
  }

  private static void requireRatedProbes(
      RigSheetReader reader, RigSheet sheet, @Nullable Double declared, double line) {
    sheet
        .channels()
        .forEach(
            (role, channel) ->
                channel
                    .complaint(declared == null ? line : declared)
                    .ifPresent(
                        complaint -> {
                          throw reader.channel(role).complaint("rated-volts", complaint);
                        }));
  }

  /** Which role each channel has. */
  private static Map<Integer, ChannelRole> requireOwnChannels(
      RigSheetReader reader, RigSheet sheet) {
    Map<Integer, ChannelRole> taken = new HashMap<>();
    sheet
        .channels()
        .forEach((role, channel) -> take(taken, role, channel.number(), reader.channel(role)));
    ClampedChannel clamped = sheet.loadCurrent();
    if (clamped != null) {
      take(
          taken,
          ChannelRole.LOAD_CURRENT,
          clamped.number(),
          reader.wired().table("load-current", ClampedChannel.KEYS));
    }
    return taken;
  }

  private static void take(
      Map<Integer, ChannelRole> taken, ChannelRole role, int number, SettingsTable table) {
    ChannelRole other = taken.putIfAbsent(number, role);
    if (other != null) {
      throw table.complaint(
          "number",
          "is "
              + number
              + ", which is the "
              + other.words()
              + "'s: connect "
              + role.words()
              + " to another");
    }
  }

  private static Path folderOf(Path file) {
    Path folder = file.toAbsolutePath().getParent();
    return folder == null ? file.toAbsolutePath() : folder;
  }
}
