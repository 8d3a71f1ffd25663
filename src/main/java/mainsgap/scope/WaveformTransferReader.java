package mainsgap.scope;

import java.util.EnumSet;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import mainsgap.scope.CodeLayout.ByteOrder;
import mainsgap.scope.TenFields.Scaling;
import mainsgap.scope.WaveformTransfer.Fetching;
import mainsgap.scope.WaveformTransfer.Rails;
import mainsgap.settings.SettingsTable;

/** Reads the part of a profile that says how a record comes over the wire. */
final class WaveformTransferReader {
  private static final Set<Placeholder> CHANNEL = EnumSet.of(Placeholder.CHANNEL);
  private static final double FARTHEST_CODE = 1e9;

  private final TemplateReader templates;

  WaveformTransferReader(TemplateReader templates) {
    this.templates = templates;
  }

  /** How volts come that need no scale. */
  private enum Numbers {
    REAL_32,
    ASCII
  }

  WaveformTransfer read(SettingsTable root) {
    WaveformKind kind =
        root.table("waveform", WaveformKind.keysOfAll()).choice("kind", WaveformKind.class);
    SettingsTable table = root.table("waveform", kind.keys());
    return switch (kind) {
      case VALUES_IN_VOLTS -> volts(table);
      case TEN_FIELD_PREAMBLE ->
          new WaveformTransfer(
              fetching(table, false),
              rails(table),
              new TenFields(
                  templates.query(table, "preamble", CHANNEL),
                  table.choice("scaling", Scaling.class),
                  codeLayout(table, false)));
      case SCALE_VALUES -> scaleValues(table);
    };
  }

  private WaveformTransfer volts(SettingsTable table) {
    boolean asText = table.choice("numbers", Numbers.class) == Numbers.ASCII;
    if (asText && table.has("byte-order")) {
      throw table.complaint("byte-order", "is for blocks of bytes, not for text: leave it out");
    }
    CodeLayout layout =
        asText
            ? CodeLayout.TEXT
            : new CodeLayout(CodeLayout.Kind.VOLTS, Float.BYTES, lsbFirst(table));
    ScaleValuesReader values = new ScaleValuesReader(templates, table);
    return new WaveformTransfer(
        fetching(table, asText),
        new Rails(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty()),
        new ScaleValues(Optional.empty(), values.times(), ScaleWords.NONE, layout));
  }

  private WaveformTransfer scaleValues(SettingsTable table) {
    ScaleValuesReader values = new ScaleValuesReader(templates, table);
    ScaleWords words = values.words();
    CodeLayout layout = codeLayout(table, words.byteOrder().isPresent());
    return new WaveformTransfer(
        fetching(table, false),
        rails(table),
        new ScaleValues(
            templates.optionalQuery(table, "preamble", CHANNEL), values.all(), words, layout));
  }

  private Fetching fetching(SettingsTable table, boolean asText) {
    return new Fetching(
        templates.commands(table, "before", Set.of()),
        templates.commands(table, "select", CHANNEL),
        new PreparationReader(templates).read(table),
        templates.commands(table, "window", TemplateReader.PART),
        templates.query(table, "data", TemplateReader.PART),
        table.whole("chunk-samples", 1, Integer.MAX_VALUE, Integer.MAX_VALUE),
        asText);
  }

  private static CodeLayout codeLayout(SettingsTable table, boolean orderIsTold) {
    CodeLayout.Kind kind =
        table.flag("signed", false) ? CodeLayout.Kind.SIGNED : CodeLayout.Kind.UNSIGNED;
    boolean lsbFirst = (!orderIsTold || table.has("byte-order")) && lsbFirst(table);
    return new CodeLayout(kind, table.whole("bytes-per-code", 1, 2, 0), lsbFirst);
  }

  private static boolean lsbFirst(SettingsTable table) {
    return table.choice("byte-order", ByteOrder.class) == ByteOrder.LSB_FIRST;
  }

  private static Rails rails(SettingsTable table) {
    OptionalDouble lowest = code(table, "lowest-code");
    OptionalDouble highest = code(table, "highest-code");
    if (lowest.isPresent()
        && highest.isPresent()
        && lowest.getAsDouble() >= highest.getAsDouble()) {
      throw table.complaint(
          "highest-code", "is not above 'lowest-code': between them lie the codes in order");
    }
    return new Rails(lowest, highest, code(table, "hole-code"));
  }

  private static OptionalDouble code(SettingsTable table, String key) {
    return table.optionalNumber(key, -FARTHEST_CODE, FARTHEST_CODE);
  }
}
