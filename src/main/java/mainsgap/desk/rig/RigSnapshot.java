package mainsgap.desk.rig;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import mainsgap.bench.RigSheet;

/**
 * All that is typed, good or bad, as words by name: to see whether something was changed, and to
 * find it again.
 *
 * @param words by the settings' keys
 */
record RigSnapshot(Map<String, String> words) {
  private static final String CONDITION = "condition.";
  private static final String MAINS_SWITCH = "kept.mains-switch";
  private static final String MARKER = "kept.marker";
  private static final String EXTERNAL_INPUT = "kept.external-input";
  private static final String SWITCH_WORDS = "kept.switch-words";
  private static final String OTHER_FILE = "kept.names-another-file";

  RigSnapshot {
    words = Map.copyOf(words);
  }

  /** What {@code fields} hold now. */
  static RigSnapshot of(RigFields fields) {
    Map<String, String> words = new TreeMap<>();
    for (Field<?> field : plain(fields)) {
      words.put(field.key(), field.text());
    }
    int number = 0;
    for (LoadFields.Condition one : fields.load.conditions) {
      if (!one.name().text().isEmpty() || !one.words().text().isEmpty()) {
        words.put(CONDITION + number + ".name", one.name().text());
        words.put(CONDITION + number + ".words", one.words().text());
        number++;
      }
    }
    RigSheet.Kept kept = fields.kept();
    words.put(MAINS_SWITCH, kept.mainsSwitch());
    words.put(MARKER, kept.marker());
    words.put(EXTERNAL_INPUT, kept.externalInput());
    words.put(SWITCH_WORDS, kept.switchWords());
    words.put(OTHER_FILE, Boolean.toString(kept.namesAnotherFile()));
    return new RigSnapshot(words);
  }

  /** Types it again. */
  void typeInto(RigFields fields) {
    plain(fields).forEach(field -> field.type(word(field.key())));
    fields.load.conditions.clear();
    for (int i = 0; words.containsKey(CONDITION + i + ".name"); i++) {
      LoadFields.Condition unused =
          fields.load.add(word(CONDITION + i + ".name"), word(CONDITION + i + ".words"));
    }
    fields.keep(
        new RigSheet.Kept(
            word(MAINS_SWITCH),
            word(MARKER),
            word(EXTERNAL_INPUT),
            words.getOrDefault(SWITCH_WORDS, RigSheet.Kept.NONE.switchWords()),
            Boolean.parseBoolean(word(OTHER_FILE))));
  }

  private String word(String key) {
    return words.getOrDefault(key, "");
  }

  private static List<Field<?>> plain(RigFields fields) {
    return Stream.of(Part.values())
        .flatMap(part -> fields.of(part).stream())
        .filter(field -> !field.key().startsWith(CONDITION))
        .toList();
  }
}
