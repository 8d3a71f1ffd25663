package mainsgap.session;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import mainsgap.session.CaptureUnits.Quantity;
import mainsgap.session.CaptureUnits.Unit;
import org.jspecify.annotations.Nullable;

/** The columns of a capture file by their headers, and the choice among them. */
final class CaptureColumns {
  private static final Pattern TIME_NAME =
      Pattern.compile("t|time|times|second|seconds|zeit|temps|tempo|tiempo|x-axis|x axis");
  private static final Pattern OUTPUT_NAME =
      Pattern.compile("(.*\\W)?(output|load voltage)(\\W.*)?");
  private static final Pattern OTHER_NAME =
      Pattern.compile("(.*\\W)?(mains|input|grid|current|marker|trigger)(\\W.*)?");
  private static final Pattern COUNT_NAME =
      Pattern.compile("x|n|no\\.?|nr\\.?|#|i|index|sample|samples|point|points|sequence");

  /**
   * One column.
   *
   * @param index from 0
   * @param name as the header has it, or "" where there is none
   * @param unit null where none is known
   */
  record Column(int index, String name, @Nullable Unit unit) {
    boolean holds(Quantity quantity) {
      return unit != null && unit.quantity() == quantity;
    }

    double factor() {
      return unit == null ? 1 : unit.factor();
    }

    /** For people: the name, else the number. */
    String label() {
      return name.isEmpty() ? "column " + (index + 1) : name;
    }

    private boolean isNamed(Pattern names) {
      return names.matcher(name.toLowerCase(Locale.ROOT)).matches();
    }
  }

  private final Path file;
  private final CaptureTable table;
  private final List<String> lines;
  private final List<Column> columns = new ArrayList<>();

  CaptureColumns(Path file, CaptureTable table, List<String> lines) {
    this.file = file;
    this.table = table;
    this.lines = lines;
    CaptureHeaders headers = CaptureHeaders.above(table, lines);
    for (int index : table.filledColumns()) {
      columns.add(new Column(index, headers.name(index), headers.unit(index)));
    }
  }

  /** The column that the user named by its header or number. */
  Column named(String wanted) {
    for (Column column : columns) {
      if (column.name().equalsIgnoreCase(CaptureUnits.nameOf(wanted)) && !wanted.isBlank()) {
        return column;
      }
    }
    for (Column column : columns) {
      if (wanted.strip().equals(String.valueOf(column.index() + 1))) {
        return column;
      }
    }
    throw new CaptureFileException(
        file + " has no column '" + wanted + "'; it has " + String.join(", ", labels()));
  }

  private List<String> labels() {
    return columns.stream()
        .map(
            column ->
                column.name().isEmpty()
                    ? String.valueOf(column.index() + 1)
                    : "'" + column.name() + "'")
        .toList();
  }

  /** The column of times: by its unit, by its name, or else the first of several that runs on. */
  @Nullable Column time() {
    for (Column column : columns) {
      if (column.holds(Quantity.TIME)) {
        return column;
      }
    }
    for (Column column : columns) {
      if (column.unit() == null && column.isNamed(TIME_NAME)) {
        return column;
      }
    }
    Column first = columns.get(0);
    return columns.size() > 1 && first.unit() == null && runsOn(first) ? first : null;
  }

  /** Whether the time column only counts samples. */
  boolean isCount(Column time) {
    if (time.unit() != null || time.isNamed(TIME_NAME)) {
      return false;
    }
    List<Double> values = values(time);
    for (int i = 1; i < values.size(); i++) {
      if (values.get(i) - values.get(i - 1) != 1) {
        return false;
      }
    }
    return time.isNamed(COUNT_NAME) || time.name().isEmpty();
  }

  /**
   * The first column of volts, else the first that is neither the time nor of another unit; one
   * that is named as the output before all others, and one that is named as something else last.
   */
  Column voltage(@Nullable Column time, Collection<Column> taken) {
    List<Column> others = new ArrayList<>(columns);
    others.remove(time);
    others.removeAll(taken);
    others.sort(
        Comparator.comparing((Column column) -> !column.isNamed(OUTPUT_NAME))
            .thenComparing(column -> column.isNamed(OTHER_NAME)));
    for (Column column : others) {
      if (column.holds(Quantity.VOLTAGE)) {
        return column;
      }
    }
    for (Column column : others) {
      if (column.unit() == null) {
        return column;
      }
    }
    throw new CaptureFileException(
        file
            + " has no column of voltages among "
            + String.join(", ", labels())
            + "; name one with --voltage-column");
  }

  private boolean runsOn(Column column) {
    List<Double> values = values(column);
    for (int i = 1; i < values.size(); i++) {
      if (values.get(i) < values.get(i - 1)) {
        return false;
      }
    }
    return values.get(values.size() - 1) > values.get(0);
  }

  /** The values of the rows looked at that have one. */
  private List<Double> values(Column column) {
    List<Double> values = new ArrayList<>();
    for (String line : lines.subList(table.firstRow(), lines.size())) {
      List<String> fields = CaptureFields.split(line, table.delimiter());
      if (column.index() < fields.size() && CaptureFields.isNumber(fields.get(column.index()))) {
        values.add(CaptureFields.number(fields.get(column.index())));
      }
    }
    return values;
  }
}
