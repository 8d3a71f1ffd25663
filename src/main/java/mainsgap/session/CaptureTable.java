package mainsgap.session;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * Where the table of numbers stands in the first lines of a file: found as the delimiter under
 * which most lines are rows of numbers alike. A preamble, whatever it says, stands before it.
 *
 * @param delimiter between fields
 * @param firstRow the index of the first row in the lines looked at
 * @param isFilled for each column whether the rows fill it
 * @param rows how many of the lines looked at are such rows
 */
record CaptureTable(char delimiter, int firstRow, List<Boolean> isFilled, int rows) {
  /** A preamble has no three lines of numbers alike one after the other. */
  private static final int ROWS_ALIKE = 3;

  private static final char[] DELIMITERS = {';', '\t', ',', '|', CaptureFields.SPACES};

  /** A table of nothing. */
  private static final CaptureTable NONE = new CaptureTable(';', 0, List.of(), 0);

  /**
   * Finds the table.
   *
   * @param oneColumn whether '325,3' is one number rather than two, where both could be
   */
  static CaptureTable find(List<String> lines, boolean oneColumn) {
    CaptureTable best = NONE;
    for (char delimiter : DELIMITERS) {
      CaptureTable table = under(delimiter, lines);
      boolean isDecimalComma =
          oneColumn && delimiter == ',' && table.columns() == 2 && best.columns() == 1;
      if (!isDecimalComma && table.isBetterThan(best)) {
        best = table;
      }
    }
    return best;
  }

  int columns() {
    return isFilled.size();
  }

  /** The indices of the columns that hold numbers. */
  List<Integer> filledColumns() {
    List<Integer> filled = new ArrayList<>();
    for (int i = 0; i < columns(); i++) {
      if (isFilled.get(i)) {
        filled.add(i);
      }
    }
    return filled;
  }

  private boolean isBetterThan(CaptureTable other) {
    return rows != other.rows
        ? rows > other.rows
        : filledColumns().size() > other.filledColumns().size();
  }

  private static CaptureTable under(char delimiter, List<String> lines) {
    List<List<Boolean>> shapes =
        lines.stream().map(line -> shape(CaptureFields.split(line, delimiter))).toList();
    int alike = 0;
    int firstRow = 0;
    List<Boolean> before = List.of();
    for (int i = 0; i < shapes.size(); i++) {
      List<Boolean> shape = shapes.get(i);
      if (lines.get(i).isBlank()) {
        continue;
      }
      boolean continues = alike > 0 && shape.equals(before);
      firstRow = continues ? firstRow : i;
      alike = shape.contains(true) ? (continues ? alike + 1 : 1) : 0;
      before = shape;
      if (alike == ROWS_ALIKE) {
        return new CaptureTable(delimiter, firstRow, shape, Collections.frequency(shapes, shape));
      }
    }
    return NONE;
  }

  /** Which fields are numbers rather than empty; nothing where one is a word. */
  private static List<Boolean> shape(List<String> fields) {
    List<Boolean> shape = new ArrayList<>();
    for (String field : fields) {
      if (!field.isEmpty() && !CaptureFields.isNumber(field)) {
        return List.of();
      }
      shape.add(!field.isEmpty());
    }
    return shape;
  }
}
