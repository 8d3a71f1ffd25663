package mainsgap.cli;

import picocli.CommandLine.TypeConversionException;

/** Numbers as people type them. */
final class NumberWord {
  private NumberWord() {}

  /** A number with a decimal point, in any of Java's decimal spellings. */
  static Double decimal(String typed) {
    try {
      return Double.valueOf(typed);
    } catch (NumberFormatException e) {
      throw new TypeConversionException(
          "'" + typed + "' is no number: write it with a point, such as 229.5");
    }
  }

  /** A whole number. */
  static Integer whole(String typed) {
    try {
      return Integer.valueOf(typed);
    } catch (NumberFormatException e) {
      throw new TypeConversionException("'" + typed + "' is no whole number, such as 20");
    }
  }
}
