package mainsgap.scope;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import mainsgap.settings.SettingsTable;

/** Reads the part of a profile that says how to ask for the acquisition's state. */
final class StateReader {
  private static final int HIGHEST_BIT = 31;

  private final TemplateReader templates;

  StateReader(TemplateReader templates) {
    this.templates = templates;
  }

  StatePolling read(SettingsTable root) {
    SettingsTable table = root.table("state", "query", "words", "bits");
    CommandTemplate query = templates.query(table, "query", Set.of());
    if (table.has("words") == table.has("bits")) {
      throw root.complaint("state", "needs either 'words' or 'bits'");
    }
    return table.has("words")
        ? new StatePolling.ByWords(query, words(table.openTable("words")))
        : new StatePolling.ByBits(query, bits(table));
  }

  private static Map<String, AcquisitionState> words(SettingsTable table) {
    Map<String, AcquisitionState> words = new HashMap<>();
    for (String word : table.keys()) {
      words.put(word.toUpperCase(Locale.ROOT), table.choice(word, AcquisitionState.class));
    }
    return words;
  }

  private static List<StatePolling.Bit> bits(SettingsTable table) {
    List<StatePolling.Bit> bits = new ArrayList<>();
    for (SettingsTable row : table.tables("bits", "bit", "means")) {
      bits.add(
          new StatePolling.Bit(
              row.whole("bit", 0, HIGHEST_BIT), row.choice("means", AcquisitionState.class)));
    }
    return bits;
  }
}
