package mainsgap.scope;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import mainsgap.scope.WaveformTransfer.Scaling;
import mainsgap.scope.WaveformTransfer.TenFields;
import mainsgap.scope.WaveformTransfer.TypedData;
import mainsgap.settings.SettingsTable;

/** Reads the part of a profile that says how a record comes over the wire. */
final class WaveformTransferReader {
  private static final Set<Placeholder> CHANNEL = EnumSet.of(Placeholder.CHANNEL);
  private static final String[] COMMON = {
    "kind", "select", "window", "data", "chunk-samples", "byte-order"
  };
  private static final String[] ALL = {
    "kind",
    "select",
    "window",
    "data",
    "chunk-samples",
    "byte-order",
    "preamble",
    "scaling",
    "bytes-per-code",
    "signed",
    "lowest-code",
    "highest-code"
  };

  private final TemplateReader templates;

  WaveformTransferReader(TemplateReader templates) {
    this.templates = templates;
  }

  /** The families of transfer. */
  enum Kind {
    TYPED_DATA,
    TEN_FIELD_PREAMBLE
  }

  private enum ByteOrder {
    LSB_FIRST,
    MSB_FIRST
  }

  WaveformTransfer read(SettingsTable root) {
    Kind kind = root.table("waveform", ALL).choice("kind", Kind.class);
    return switch (kind) {
      case TYPED_DATA -> typedData(root.table("waveform", COMMON));
      case TEN_FIELD_PREAMBLE -> tenFields(root.table("waveform", ALL));
    };
  }

  private TypedData typedData(SettingsTable table) {
    List<CommandTemplate> window = window(table);
    return new TypedData(
        templates.commands(table, "select", CHANNEL),
        window,
        templates.query(table, "data", TemplateReader.PART),
        chunkSamples(table),
        lsbFirst(table));
  }

  private TenFields tenFields(SettingsTable table) {
    return new TenFields(
        templates.commands(table, "select", CHANNEL),
        window(table),
        templates.query(table, "data", TemplateReader.PART),
        chunkSamples(table),
        lsbFirst(table),
        templates.query(table, "preamble", CHANNEL),
        table.choice("scaling", Scaling.class),
        table.whole("bytes-per-code", 1, 2, 0),
        table.flag("signed", false),
        table.optionalNumber("lowest-code", -1e9, 1e9),
        table.optionalNumber("highest-code", -1e9, 1e9));
  }

  private List<CommandTemplate> window(SettingsTable table) {
    return templates.commands(table, "window", TemplateReader.PART);
  }

  private static int chunkSamples(SettingsTable table) {
    return table.whole("chunk-samples", 1, Integer.MAX_VALUE, Integer.MAX_VALUE);
  }

  private static boolean lsbFirst(SettingsTable table) {
    return table.choice("byte-order", ByteOrder.class) == ByteOrder.LSB_FIRST;
  }
}
