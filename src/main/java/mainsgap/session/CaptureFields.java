package mainsgap.session;

import java.util.ArrayList;
import java.util.List;

/** The fields of a line, and the numbers in them. */
final class CaptureFields {
  /** Stands for a run of white space. */
  static final char SPACES = ' ';

  private CaptureFields() {}

  /** The fields without their quotes and outer spaces; empty ones at the end are left out. */
  static List<String> split(String line, char delimiter) {
    if (delimiter == SPACES) {
      String trimmed = line.strip();
      return trimmed.isEmpty() ? List.of() : List.of(trimmed.split("\\s+", -1));
    }
    List<String> fields = new ArrayList<>();
    boolean quoted = false;
    int start = 0;
    for (int i = 0; i <= line.length(); i++) {
      if (i == line.length() || (line.charAt(i) == delimiter && !quoted)) {
        fields.add(bare(line.substring(start, i)));
        start = i + 1;
      } else if (line.charAt(i) == '"') {
        quoted = !quoted;
      }
    }
    while (!fields.isEmpty() && fields.get(fields.size() - 1).isEmpty()) {
      fields.remove(fields.size() - 1);
    }
    return fields;
  }

  private static String bare(String field) {
    String trimmed = field.strip();
    boolean quoted = trimmed.length() > 1 && trimmed.startsWith("\"") && trimmed.endsWith("\"");
    return quoted ? trimmed.substring(1, trimmed.length() - 1).strip() : trimmed;
  }

  /** Whether {@code field} is a finite decimal number, with a point or a comma. */
  static boolean isNumber(String field) {
    return Double.isFinite(number(field));
  }

  /** The number that {@code field} says with a decimal point or comma; NaN where it says none. */
  static double number(String field) {
    int digits = 0;
    for (int i = 0; i < field.length(); i++) {
      char c = field.charAt(i);
      if (c >= '0' && c <= '9') {
        digits++;
      } else if ("+-.,eE".indexOf(c) < 0) {
        // Java would take NaN, Infinity, 1d, 1f and hexadecimal numbers too
        return Double.NaN;
      }
    }
    if (digits == 0) {
      return Double.NaN;
    }
    try {
      return Double.parseDouble(field.replace(',', '.'));
    } catch (NumberFormatException e) {
      return Double.NaN;
    }
  }

  /** What one step of the last printed digit of a number is worth. */
  static double printStep(String number) {
    int exponentAt = Math.max(number.indexOf('e'), number.indexOf('E'));
    String mantissa = exponentAt < 0 ? number : number.substring(0, exponentAt);
    double exponent = exponentAt < 0 ? 0 : Double.parseDouble(number.substring(exponentAt + 1));
    int mark = Math.max(mantissa.indexOf('.'), mantissa.indexOf(','));
    int decimals = mark < 0 ? 0 : mantissa.length() - mark - 1;
    return Math.pow(10, exponent - decimals);
  }
}
