package mainsgap.scope;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import mainsgap.scope.WaveformTransfer.Preparation;
import mainsgap.scope.WaveformTransfer.Ready;
import mainsgap.settings.SettingsTable;

/** Reads what an instrument must do before it hands out samples. */
final class PreparationReader {
  private static final int LONGEST_MILLIS = 600_000;
  private static final double LONGEST_MICROS_FOR_EACH_SAMPLE = 100;

  private final TemplateReader templates;

  PreparationReader(TemplateReader templates) {
    this.templates = templates;
  }

  /** How often it is prepared. */
  private enum Each {
    RECORD,
    PART
  }

  Optional<Preparation> read(SettingsTable waveform) {
    return waveform
        .optionalTable(
            "prepare",
            "each",
            "commands",
            "query",
            "ready",
            "poll-millis",
            "at-most-millis",
            "wait-micros-for-each-sample")
        .map(this::preparation);
  }

  private Preparation preparation(SettingsTable table) {
    List<CommandTemplate> commands = templates.commands(table, "commands", TemplateReader.PART);
    OptionalDouble micros =
        table.optionalNumber("wait-micros-for-each-sample", 0, LONGEST_MICROS_FOR_EACH_SAMPLE);
    Optional<Ready> ready = table.has("query") ? Optional.of(ready(table)) : Optional.empty();
    if (ready.isEmpty()) {
      for (String key : List.of("ready", "poll-millis", "at-most-millis")) {
        if (table.has(key)) {
          throw table.complaint(key, "needs a 'query' beside it");
        }
      }
    }
    boolean forEachPart = table.has("each") && table.choice("each", Each.class) == Each.PART;
    return new Preparation(
        commands,
        ready,
        micros.isPresent() ? OptionalDouble.of(micros.getAsDouble() * 1e-6) : micros,
        forEachPart);
  }

  private Ready ready(SettingsTable table) {
    CommandTemplate query = templates.poll(table, "query", TemplateReader.PART);
    Pattern answer = TemplateReader.pattern(table, "ready");
    return new Ready(
        query,
        answer,
        Duration.ofMillis(table.whole("poll-millis", 1, LONGEST_MILLIS, 100)),
        Duration.ofMillis(table.whole("at-most-millis", 1, LONGEST_MILLIS, 30_000)));
  }
}
