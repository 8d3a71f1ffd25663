package mainsgap.cli;

import java.util.ArrayList;
import java.util.List;

/** Rows of words in aligned columns. The last column is free text and is not padded. */
final class TextTable {
  private static final String GAP = "  ";

  /** How a column stands. */
  enum Side {
    LEFT,
    RIGHT
  }

  private final List<Side> sides;
  private final List<List<String>> rows = new ArrayList<>();

  TextTable(Side... sides) {
    this.sides = List.of(sides);
  }

  /** Adds a row with a cell for each column. */
  void add(String... cells) {
    if (cells.length != sides.size()) {
      throw new IllegalArgumentException(
          "a row has " + sides.size() + " cells, found " + cells.length);
    }
    rows.add(List.of(cells));
  }

  @Override
  public String toString() {
    int[] widths = new int[sides.size()];
    for (List<String> row : rows) {
      for (int column = 0; column < widths.length; column++) {
        widths[column] = Math.max(widths[column], row.get(column).length());
      }
    }
    StringBuilder text = new StringBuilder();
    for (List<String> row : rows) {
      StringBuilder line = new StringBuilder();
      for (int column = 0; column < widths.length; column++) {
        line.append(column == 0 ? "" : GAP).append(cell(row, column, widths[column]));
      }
      text.append(line.toString().stripTrailing()).append('\n');
    }
    return text.toString();
  }

  private String cell(List<String> row, int column, int width) {
    String padding = " ".repeat(width - row.get(column).length());
    return sides.get(column) == Side.LEFT ? row.get(column) + padding : padding + row.get(column);
  }
}
