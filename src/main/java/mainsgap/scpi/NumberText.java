package mainsgap.scpi;

import java.util.Arrays;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A record that came as text. Pure. */
final class NumberText {
  /** Sign, seventeen digits, point, exponent and comma, with room for blanks. */
  static final int LONGEST_NUMBER = 32;

  /** A header, and that of a block. */
  static final int LONGEST_HEADER = 256;

  /** The header of a definite block; the digits of its count are cut off by their number. */
  private static final Pattern BLOCK = Pattern.compile("[^#,]*#([1-9])");

  private NumberText() {}

  /** The numbers between the commas; NaN and the infinities of SCPI are those of Java. */
  static double[] parse(String text) {
    int from = behindBlockHeader(text);
    double[] numbers = new double[1 + (int) text.chars().skip(from).filter(c -> c == ',').count()];
    for (int i = 0; i < numbers.length; i++) {
      int comma = text.indexOf(',', from);
      int to = comma < 0 ? text.length() : comma;
      // instruments end a list with a comma: nothing stands behind it
      if (i == numbers.length - 1 && i > 0 && text.substring(from).isBlank()) {
        return Arrays.copyOf(numbers, i);
      }
      numbers[i] = number(text.substring(from, to).strip());
      from = to + 1;
    }
    return numbers;
  }

  private static int behindBlockHeader(String text) {
    Matcher header = BLOCK.matcher(text.substring(0, Math.min(text.length(), LONGEST_HEADER)));
    return header.lookingAt()
        ? Math.min(text.length(), header.end() + Integer.parseInt(header.group(1)))
        : 0;
  }

  private static double number(String field) {
    try {
      return ScpiNumber.parse(field);
    } catch (NumberFormatException e) {
      throw new ScpiException("it has '" + field + "' where a number should be", e);
    }
  }
}
