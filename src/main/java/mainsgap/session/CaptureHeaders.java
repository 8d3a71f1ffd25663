package mainsgap.session;

import java.util.List;
import mainsgap.session.CaptureUnits.Unit;
import org.jspecify.annotations.Nullable;

/** The names and units that stand above the table of a capture file. */
final class CaptureHeaders {
  /** Names, units and one line more. */
  private static final int HIGHEST = 3;

  private List<String> names = List.of();
  private List<String> units = List.of();

  private CaptureHeaders() {}

  static CaptureHeaders above(CaptureTable table, List<String> lines) {
    CaptureHeaders headers = new CaptureHeaders();
    int looked = 0;
    for (int i = table.firstRow() - 1; i >= 0 && looked < HIGHEST; i--) {
      List<String> fields = fields(lines.get(i), table.delimiter());
      if (!fields.isEmpty()) {
        looked++;
        headers.take(fields, table);
      }
    }
    return headers;
  }

  private void take(List<String> fields, CaptureTable table) {
    if (!hasWordOverEachColumn(fields, table) || !names.isEmpty()) {
      return;
    }
    boolean areUnits =
        fields.stream().allMatch(field -> field.isEmpty() || CaptureUnits.of(field) != null);
    if (areUnits && units.isEmpty()) {
      units = fields;
    } else {
      names = fields;
    }
  }

  private static boolean hasWordOverEachColumn(List<String> fields, CaptureTable table) {
    return table.filledColumns().stream()
        .allMatch(
            index ->
                index < fields.size()
                    && !fields.get(index).isEmpty()
                    && !CaptureFields.isNumber(fields.get(index)));
  }

  /** Where spaces part the fields, a unit in parentheses belongs to the word before it. */
  private static List<String> fields(String line, char delimiter) {
    boolean spaces = delimiter == CaptureFields.SPACES;
    return CaptureFields.split(
        spaces ? line.replaceAll("(?<=\\S)\\s+(?=[(\\[])", "") : line, delimiter);
  }

  /** The bare name of a column, or "". */
  String name(int index) {
    return index < names.size() ? CaptureUnits.nameOf(names.get(index)) : "";
  }

  /** The unit of a column: from the units line, else from its name. */
  @Nullable Unit unit(int index) {
    if (index < units.size() && !units.get(index).isEmpty()) {
      return CaptureUnits.of(units.get(index));
    }
    return index < names.size() ? CaptureUnits.inHeader(names.get(index)) : null;
  }
}
