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
import mainsgap.signal.Rails;
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
  private final CaptureFileOptions options;
  private final int mostSamples;
  private final List<String> head = new ArrayList<>();
  private final Map<ChannelRole, Column> channels = new EnumMap<>(ChannelRole.class);

  private CaptureFile(Path file, CaptureLines lines, CaptureFileOptions options, int mostSamples) {
    this.file = file;
    this.lines = lines;
    this.options = options;
    this.mostSamples = mostSamples;
  }

  /** Reads the capture in {@code file}. */
  public static Capture read(Path file, CaptureFileOptions options) {
    return read(file, options, MOST_SAMPLES);
  }

  static Capture read(Path file, CaptureFileOptions options, int mostSamples) {
    try (CaptureLines lines = CaptureLines.open(file)) {
      return new CaptureFile(file, lines, options, mostSamples).read();
    }
  }

  private Capture read() {
    readHead();
    CaptureTable table = CaptureTable.find(head, options.intervalSeconds() != null);
    if (table.rows() == 0) {
      throw noTable();
    }
    CaptureColumns columns = new CaptureColumns(file, table, head);
    Column time =
        options.timeColumn() == null ? columns.time() : columns.named(options.timeColumn());
    OptionalDouble interval = interval(table, columns, time);
    choose(columns, time, interval.isPresent());
    if (interval.isEmpty()) {
      channels.values().forEach(column -> requireOther(column, "a voltage", time, "the times"));
    }
    Column read = channels.containsValue(time) ? null : time;
    CaptureRows rows =
        new CaptureRows(
            file, table, new CaptureRows.Chosen(read, channels, options.scale()), mostSamples);
    rows.read(head, lines);
    return capture(rows, interval, read);
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
            + CaptureLines.shortened(first.strip())
            + "'; export the capture as a table of samples");
  }

  private OptionalDouble interval(
      CaptureTable table, CaptureColumns columns, @Nullable Column time) {
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

  private void choose(CaptureColumns columns, @Nullable Column time, boolean isIntervalKnown) {
    Map<ChannelRole, Column> named = new EnumMap<>(ChannelRole.class);
    options.columns().forEach((role, name) -> named.put(role, columns.named(name)));
    Column output =
        named.containsKey(ChannelRole.OUTPUT)
            ? named.get(ChannelRole.OUTPUT)
            : columns.voltage(time, named.values());
    channels.put(ChannelRole.OUTPUT, output);
    named.forEach(
        (role, column) -> {
          if (role != ChannelRole.OUTPUT) {
            channels.forEach((other, taken) -> requireOther(taken, use(other), column, use(role)));
            channels.put(role, column);
          }
        });
    LOG.info(
        "{}: voltage from {}, time from {}",
        file,
        output.label(),
        time == null || isIntervalKnown ? "the interval" : time.label());
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

  private Capture capture(CaptureRows rows, OptionalDouble interval, @Nullable Column time) {
    int samples = rows.samples();
    if (samples < FEWEST_SAMPLES) {
      throw new CaptureFileException(
          file + " has " + samples + " samples, a capture needs at least " + FEWEST_SAMPLES);
    }
    Map<ChannelRole, Waveform> waveforms = new EnumMap<>(ChannelRole.class);
    rows.volts().forEach((role, numbers) -> waveforms.put(role, waveform(numbers)));
    return new Capture(axis(rows, interval, time), waveforms);
  }

  private TimeAxis axis(CaptureRows rows, OptionalDouble interval, @Nullable Column time) {
    TimeBase timeBase = new TimeBase(options.timeBasePpm());
    if (interval.isEmpty()) {
      return rows.times().axis(file, timeBase);
    }
    double seconds = interval.getAsDouble();
    if (time != null) {
      rows.times().require(file, seconds, time.holds(CaptureUnits.Quantity.TIME));
    }
    return timeBase.axis(0, seconds, rows.samples(), 0);
  }

  private static Waveform waveform(Numbers volts) {
    ByteBuffer block =
        ByteBuffer.allocate(volts.size() * Double.BYTES).order(ByteOrder.LITTLE_ENDIAN);
    for (int i = 0; i < volts.size(); i++) {
      block.putDouble(volts.get(i));
    }
    return new Waveform(
        block.array(), CodeFormat.REAL_64_LSB_FIRST, Rails.scaleOf(volts.size(), volts::get));
  }
}
