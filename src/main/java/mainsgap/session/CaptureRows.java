package mainsgap.session;

import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import mainsgap.session.CaptureColumns.Column;
import mainsgap.signal.ChannelRole;
import org.jspecify.annotations.Nullable;

/** Reads the rows of a table into numbers: the times, and the volts of each channel. */
final class CaptureRows {
  private final Path file;
  private final CaptureTable table;
  private final Chosen chosen;
  private final int mostSamples;
  private final Map<ChannelRole, Numbers> volts = new EnumMap<>(ChannelRole.class);
  private final UniformTime times = new UniformTime();

  /**
   * What is read.
   *
   * @param time the column of times; null where none is read
   * @param channels the columns by what they hold; the output is among them
   * @param scale multiplies the voltages
   */
  record Chosen(@Nullable Column time, Map<ChannelRole, Column> channels, double scale) {}

  CaptureRows(Path file, CaptureTable table, Chosen chosen, int mostSamples) {
    this.file = file;
    this.table = table;
    this.chosen = chosen;
    this.mostSamples = mostSamples;
    chosen.channels().keySet().forEach(role -> volts.put(role, new Numbers()));
  }

  /** The volts of each channel; amperes or a marker's level where it holds these. */
  Map<ChannelRole, Numbers> volts() {
    return volts;
  }

  UniformTime times() {
    return times;
  }

  int samples() {
    return numbers(ChannelRole.OUTPUT).size();
  }

  /** Reads the rows among the lines looked at, and those that follow. */
  void read(List<String> head, CaptureLines lines) {
    for (int i = firstRow(head); i < head.size(); i++) {
      readRow(head.get(i), i + 1);
    }
    for (String line = lines.next(); line != null; line = lines.next()) {
      readRow(line, lines.number());
    }
  }

  /** Rows whose other columns hold words of the preamble are samples as well. */
  private int firstRow(List<String> head) {
    Column time = chosen.time();
    int first = table.firstRow();
    while (time != null && first > 0 && isSample(time, head.get(first - 1))) {
      first--;
    }
    return first;
  }

  private boolean isSample(Column time, String line) {
    List<String> fields = CaptureFields.split(line, table.delimiter());
    return isNumberAt(fields, time)
        && chosen.channels().values().stream().allMatch(column -> isNumberAt(fields, column));
  }

  private static boolean isNumberAt(List<String> fields, Column column) {
    return column.index() < fields.size() && CaptureFields.isNumber(fields.get(column.index()));
  }

  private void readRow(String line, int number) {
    if (line.isBlank()) {
      return;
    }
    List<String> fields = CaptureFields.split(line, table.delimiter());
    Column time = chosen.time();
    if (samples() == mostSamples) {
      throw CaptureLines.wrong(
          file, number, "goes beyond " + mostSamples + " samples; export a part of the record");
    }
    if (time != null) {
      double seconds = valueOf(fields, time, line, number);
      double printStep = CaptureFields.printStep(fields.get(time.index()));
      times.add(seconds * time.factor(), printStep * time.factor(), number);
    }
    chosen
        .channels()
        .forEach(
            (role, column) ->
                numbers(role)
                    .add(valueOf(fields, column, line, number) * column.factor() * scaleOf(role)));
    if (fields.size() > table.columns() && number > table.firstRow()) {
      throw CaptureLines.wrong(
          file, number, "has " + fields.size() + " fields, the rows before it " + table.columns());
    }
  }

  /** The factor of a voltage probe is none of the current's or the marker's. */
  private double scaleOf(ChannelRole role) {
    return switch (role) {
      case OUTPUT, MAINS, SECOND_LEG -> chosen.scale();
      case LOAD_CURRENT, MARKER -> 1;
    };
  }

  private double valueOf(List<String> fields, Column column, String line, int number) {
    if (column.index() >= fields.size() || fields.get(column.index()).isEmpty()) {
      throw CaptureLines.wrong(
          file,
          number,
          "has no value for "
              + column.label()
              + ": it reads '"
              + CaptureLines.shortened(line.strip())
              + "'");
    }
    double value = CaptureFields.number(fields.get(column.index()));
    if (!Double.isFinite(value)) {
      throw CaptureLines.wrong(
          file,
          number,
          "has '"
              + CaptureLines.shortened(fields.get(column.index()))
              + "' for "
              + column.label()
              + ", where a number should stand; export the capture again, or the part without it");
    }
    return value;
  }

  private Numbers numbers(ChannelRole role) {
    Numbers found = volts.get(role);
    if (found == null) {
      throw new AssertionError("every channel has its numbers");
    }
    return found;
  }
}
