package mainsgap.session;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import mainsgap.session.CaptureColumns.Column;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.CodeFormat;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.Waveform;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Reads a capture that an oscilloscope, or any other program, wrote as a table of numbers in text:
 * the delimiter, decimal commas, a preamble, headers and units, and the columns are found, options
 * override. Each failure is one sentence with the file, the line and the reason.
 */
public final class CaptureFile {
  private static final Logger LOG = LoggerFactory.getLogger(CaptureFile.class);

  /** Lines in which the table must begin. */
  private static final int LINES_LOOKED_AT = 500;

  private static final int FEWEST_SAMPLES = 16;
  private static final int MOST_SAMPLES = 20_000_000;

  private final Path file;
  private final CaptureLines lines;
  private final double scale;
  private final int mostSamples;
  private final List<String> head = new ArrayList<>();
  private final Map<ChannelRole, Column> channels = new EnumMap<>(ChannelRole.class);
  private final Map<ChannelRole, Numbers> volts = new EnumMap<>(ChannelRole.class);
  private final UniformTime times = new UniformTime();

  private CaptureFile(Path file, CaptureLines lines, double scale, int mostSamples) {
    this.file = file;
    this.lines = lines;
    this.scale = scale;
    this.mostSamples = mostSamples;
  }

  /** Reads the capture in {@code file}. */
  public static Capture read(Path file, CaptureFileOptions options) {
    return read(file, options, MOST_SAMPLES);
  }

  static Capture read(Path file, CaptureFileOptions options, int mostSamples) {
    try (CaptureLines lines = CaptureLines.open(file)) {
      return new CaptureFile(file, lines, options.scale(), mostSamples).read(options);
    }
  }

  private Capture read(CaptureFileOptions options) {
    readHead();
    CaptureTable table = CaptureTable.find(head, options.intervalSeconds() != null);
    if (table.rows() == 0) {
      throw noTable();
    }
    CaptureColumns columns = new CaptureColumns(file, table, head);
    Column time =
        options.timeColumn() == null ? columns.time() : columns.named(options.timeColumn());
    OptionalDouble interval = interval(table, columns, time, options);
    choose(columns, time, options);
    if (interval.isEmpty()) {
      channels.values().forEach(column -> requireOther(column, "a voltage", time, "the times"));
    }
    readRows(table, interval.isPresent() ? null : time);
    return capture(interval);
  }

  private void readHead() {
    String line = lines.next();
    while (line != null) {
      head.add(line);
      line = head.size() < LINES_LOOKED_AT ? lines.next() : null;
    }
    if (head.stream().allMatch(String::isBlank)) {
      throw new CaptureFileException(
          file + " is empty; export the capture again" + (head.isEmpty() ? "" : ", with samples"));
    }
  }

  private CaptureFileException noTable() {
    String first = head.stream().filter(line -> !line.isBlank()).findFirst().orElse("");
    return new CaptureFileException(
        file
            + " has no three rows of numbers alike in its first "
            + head.size()
            + " lines; it begins with '"
            + shortened(first.strip())
            + "'; export the capture as a table of samples");
  }

  private OptionalDouble interval(
      CaptureTable table,
      CaptureColumns columns,
      @Nullable Column time,
      CaptureFileOptions options) {
    if (options.intervalSeconds() != null) {
      return OptionalDouble.of(options.intervalSeconds());
    }
    if (options.timeColumn() != null || (time != null && !columns.isCount(time))) {
      return OptionalDouble.empty();
    }
    OptionalDouble told = CaptureInterval.in(table, head);
    if (told.isEmpty()) {
      throw new CaptureFileException(
          file
              + " has no column of times and no sample interval; name the column with"
              + " --time-column, or give --interval");
    }
    return told;
  }

  private void choose(CaptureColumns columns, @Nullable Column time, CaptureFileOptions options) {
    Map<ChannelRole, Column> named = new EnumMap<>(ChannelRole.class);
    options.columns().forEach((role, name) -> named.put(role, columns.named(name)));
    Column output =
        named.containsKey(ChannelRole.OUTPUT)
            ? named.get(ChannelRole.OUTPUT)
            : columns.voltage(time, named.values());
    take(ChannelRole.OUTPUT, output);
    named.forEach(
        (role, column) -> {
          if (role != ChannelRole.OUTPUT) {
            channels.forEach((other, taken) -> requireOther(taken, use(other), column, use(role)));
            take(role, column);
          }
        });
    LOG.info(
        "{}: voltage from {}, time from {}",
        file,
        output.label(),
        time == null ? "the interval" : time.label());
  }

  private static String use(ChannelRole role) {
    return role == ChannelRole.OUTPUT ? "the voltage" : "the " + role.words();
  }

  private void requireOther(Column one, String oneUse, @Nullable Column other, String otherUse) {
    if (one.equals(other)) {
      throw new CaptureFileException(
          file
              + ": "
              + oneUse
              + " and "
              + otherUse
              + " cannot both come from '"
              + one.label()
              + "'; name two columns");
    }
  }

  private void take(ChannelRole role, Column column) {
    channels.put(role, column);
    volts.put(role, new Numbers());
  }

  private void readRows(CaptureTable table, @Nullable Column time) {
    for (int i = firstRow(table, time); i < head.size(); i++) {
      readRow(table, time, head.get(i), i + 1);
    }
    for (String line = lines.next(); line != null; line = lines.next()) {
      readRow(table, time, line, lines.number());
    }
  }

  /** Rows whose other columns hold words of the preamble are samples as well. */
  private int firstRow(CaptureTable table, @Nullable Column time) {
    int first = table.firstRow();
    while (time != null && first > 0 && isSample(table, time, head.get(first - 1))) {
      first--;
    }
    return first;
  }

  private boolean isSample(CaptureTable table, Column time, String line) {
    List<String> fields = CaptureFields.split(line, table.delimiter());
    return isNumberAt(fields, time)
        && channels.values().stream().allMatch(column -> isNumberAt(fields, column));
  }

  private static boolean isNumberAt(List<String> fields, Column column) {
    return column.index() < fields.size() && CaptureFields.isNumber(fields.get(column.index()));
  }

  private void readRow(CaptureTable table, @Nullable Column time, String line, int number) {
    if (line.isBlank()) {
      return;
    }
    List<String> fields = CaptureFields.split(line, table.delimiter());
    if (output().size() == mostSamples) {
      throw CaptureLines.wrong(
          file, number, "goes beyond " + mostSamples + " samples; export a part of the record");
    }
    if (time != null) {
      double seconds = valueOf(fields, time, line, number);
      double printStep = CaptureFields.printStep(fields.get(time.index()));
      times.add(seconds * time.factor(), printStep * time.factor(), number);
    }
    channels.forEach(
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
      case OUTPUT, MAINS, SECOND_LEG -> scale;
      case LOAD_CURRENT, MARKER -> 1;
    };
  }

  private double valueOf(List<String> fields, Column column, String line, int number) {
    if (column.index() >= fields.size() || fields.get(column.index()).isEmpty()) {
      throw CaptureLines.wrong(
          file,
          number,
          "has no value for " + column.label() + ": it reads '" + shortened(line.strip()) + "'");
    }
    double value = CaptureFields.number(fields.get(column.index()));
    if (!Double.isFinite(value)) {
      throw CaptureLines.wrong(
          file,
          number,
          "has '"
              + shortened(fields.get(column.index()))
              + "' for "
              + column.label()
              + ", where a number should stand; export the capture again, or the part without it");
    }
    return value;
  }

  private Capture capture(OptionalDouble interval) {
    int samples = output().size();
    if (samples < FEWEST_SAMPLES) {
      throw new CaptureFileException(
          file + " has " + samples + " samples, a capture needs at least " + FEWEST_SAMPLES);
    }
    TimeAxis axis =
        interval.isPresent()
            ? new TimeAxis(0, interval.getAsDouble(), samples, UniformTime.UNKNOWN_TIME_BASE_PPM)
            : times.axis(file);
    Map<ChannelRole, Waveform> waveforms = new EnumMap<>(ChannelRole.class);
    volts.forEach((role, numbers) -> waveforms.put(role, waveform(numbers)));
    return new Capture(axis, waveforms);
  }

  private static Waveform waveform(Numbers volts) {
    ByteBuffer block =
        ByteBuffer.allocate(volts.size() * Double.BYTES).order(ByteOrder.LITTLE_ENDIAN);
    for (int i = 0; i < volts.size(); i++) {
      block.putDouble(volts.get(i));
    }
    return new Waveform(block.array(), CodeFormat.REAL_64_LSB_FIRST, Rails.scaleOf(volts));
  }

  private Numbers output() {
    return numbers(ChannelRole.OUTPUT);
  }

  private Numbers numbers(ChannelRole role) {
    Numbers found = volts.get(role);
    if (found == null) {
      throw new AssertionError("every channel has its numbers");
    }
    return found;
  }

  private static String shortened(String text) {
    return text.length() <= 40 ? text : text.substring(0, 40) + "...";
  }
}
