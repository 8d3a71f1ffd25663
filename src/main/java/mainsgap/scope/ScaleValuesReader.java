package mainsgap.scope;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import mainsgap.scope.CodeLayout.ByteOrder;
import mainsgap.scope.NumberSource.Asked;
import mainsgap.scope.NumberSource.Conversion;
import mainsgap.scope.NumberSource.Fixed;
import mainsgap.scope.NumberSource.Named;
import mainsgap.scope.ScaleWords.PointKind;
import mainsgap.settings.SettingsTable;

/** Reads where the values are found that say what samples mean. */
final class ScaleValuesReader {
  private static final Set<Placeholder> CHANNEL = EnumSet.of(Placeholder.CHANNEL);
  private static final double FARTHEST = 1e12;

  private final TemplateReader templates;
  private final SettingsTable waveform;

  ScaleValuesReader(TemplateReader templates, SettingsTable waveform) {
    this.templates = templates;
    this.waveform = waveform;
  }

  /** Those that place a sample in time; none where the profile has no table for them. */
  Map<ScaleNumber, NumberSource> times() {
    Set<ScaleNumber> times = EnumSet.noneOf(ScaleNumber.class);
    for (ScaleNumber number : ScaleNumber.values()) {
      if (!number.isVertical() && number != ScaleNumber.BYTES_PER_CODE) {
        times.add(number);
      }
    }
    return waveform.has("values") ? numbers(times) : Map.of();
  }

  /** All of them, the step of a code at least. */
  Map<ScaleNumber, NumberSource> all() {
    Map<ScaleNumber, NumberSource> numbers = numbers(EnumSet.allOf(ScaleNumber.class));
    if (!numbers.containsKey(ScaleNumber.VOLTS_PER_CODE)) {
      throw waveform.complaint(
          "values", "has no 'volts-per-code': without it no code means a voltage");
    }
    return numbers;
  }

  ScaleWords words() {
    return waveform
        .optionalTable("words", "code-kind", "byte-order", "point-kind")
        .map(
            table ->
                new ScaleWords(
                    word(table, "code-kind", CodeLayout.Kind.class),
                    word(table, "byte-order", ByteOrder.class),
                    word(table, "point-kind", PointKind.class)))
        .orElse(ScaleWords.NONE);
  }

  private Map<ScaleNumber, NumberSource> numbers(Set<ScaleNumber> allowed) {
    String[] keys = allowed.stream().map(ScaleNumber::spelt).toArray(String[]::new);
    SettingsTable table = waveform.table("values", keys);
    Map<ScaleNumber, NumberSource> numbers = new EnumMap<>(ScaleNumber.class);
    for (ScaleNumber number : allowed) {
      table
          .optionalTable(number.spelt(), "name", "query", "value", "times", "inverse")
          .ifPresent(source -> numbers.put(number, source(table, number.spelt(), source)));
    }
    return numbers;
  }

  private NumberSource source(SettingsTable table, String key, SettingsTable source) {
    checkOne(table, key, source, "name", "query", "value");
    if (source.has("value")) {
      refuseBeside(source, "value", "times");
      refuseBeside(source, "value", "inverse");
      return new Fixed(source.number("value", -FARTHEST, FARTHEST));
    }
    double times = source.has("times") ? source.number("times", -FARTHEST, FARTHEST) : 1;
    if (times == 0) {
      throw source.complaint("times", "is 0: nothing would be left of the answer");
    }
    Conversion conversion = new Conversion(times, source.flag("inverse", false));
    return source.has("name")
        ? new Named(name(source), conversion)
        : new Asked(templates.query(source, "query", CHANNEL), conversion);
  }

  private <E extends Enum<E>> Optional<ScaleWords.Source<E>> word(
      SettingsTable words, String key, Class<E> meanings) {
    return words
        .optionalTable(key, "name", "query", "words")
        .map(
            source -> {
              checkOne(words, key, source, "name", "query");
              Optional<String> name =
                  source.has("name") ? Optional.of(name(source)) : Optional.empty();
              return new ScaleWords.Source<>(
                  name,
                  templates.optionalQuery(source, "query", CHANNEL),
                  meanings(source.openTable("words"), meanings));
            });
  }

  private static <E extends Enum<E>> Map<String, E> meanings(SettingsTable table, Class<E> type) {
    Map<String, E> meanings = new HashMap<>();
    for (String word : table.keys()) {
      meanings.put(word.toUpperCase(Locale.ROOT), table.choice(word, type));
    }
    return meanings;
  }

  private String name(SettingsTable source) {
    if (!waveform.has("preamble")) {
      throw source.complaint("name", "is looked for in a preamble: write its query as 'preamble'");
    }
    return source.text("name");
  }

  private static void checkOne(
      SettingsTable table, String key, SettingsTable source, String... ways) {
    int found = 0;
    for (String way : ways) {
      found += source.has(way) ? 1 : 0;
    }
    if (found != 1) {
      throw table.complaint(key, "needs one of: " + String.join(", ", ways));
    }
  }

  private static void refuseBeside(SettingsTable source, String key, String other) {
    if (source.has(other)) {
      throw source.complaint(other, "does not go with '" + key + "': leave it out");
    }
  }
}
