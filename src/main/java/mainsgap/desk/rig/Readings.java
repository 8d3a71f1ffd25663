package mainsgap.desk.rig;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import mainsgap.bench.InstrumentChoice;
import mainsgap.desk.rig.Reading.BadTextException;

/** The readings of the rig's settings. */
final class Readings {
  private static final int LONGEST_TEXT = 1000;

  private static final Pattern NUMBER =
      Pattern.compile("[+-]?(\\d+([.,]\\d*)?|[.,]\\d+)([eE][+-]?\\d{1,3})?");
  private static final Pattern THOUSANDS = Pattern.compile("[+-]?\\d{1,3}(,\\d{3})+(\\.\\d*)?");

  private Readings() {}

  /** Words on one line. */
  static Reading<String> words() {
    return text -> {
      if (text.length() > LONGEST_TEXT || text.chars().anyMatch(Character::isISOControl)) {
        throw new BadTextException("is one plain line of at most " + LONGEST_TEXT + " characters");
      }
      return text;
    };
  }

  /**
   * A number with one decimal sign, a point or a comma. A comma before three digits is asked about:
   * it may part thousands, and then the number would be a thousandth of what was meant.
   */
  static Reading<Double> number(double least, double most, String unit) {
    String allowed = plain(least) + " to " + plain(most) + (unit.isEmpty() ? "" : " " + unit);
    return text -> {
      if (THOUSANDS.matcher(text).matches()) {
        throw new BadTextException(
            "is '"
                + text
                + "', which may be read in two ways: write it without the comma, or with a"
                + " decimal point");
      }
      if (!NUMBER.matcher(text).matches()) {
        throw new BadTextException("is '" + text + "', which is no number; allowed: " + allowed);
      }
      double number = Double.parseDouble(text.replace(',', '.'));
      if (!(number >= least && number <= most)) {
        throw new BadTextException("is " + text + "; allowed: " + allowed);
      }
      return number;
    };
  }

  /** A whole number. */
  static Reading<Integer> whole(int least, int most) {
    return text -> {
      try {
        int number = Integer.parseInt(text);
        if (number >= least && number <= most) {
          return number;
        }
      } catch (NumberFormatException e) {
        // said below, as for a number beyond the limits
      }
      throw new BadTextException(
          "is '" + text + "'; allowed: a whole number from " + least + " to " + most);
    };
  }

  /** One of the constants, by its word. */
  static <E extends Enum<E>> Reading<E> choice(Class<E> type, Function<E, String> word) {
    return text ->
        Arrays.stream(type.getEnumConstants())
            .filter(one -> word.apply(one).equals(text))
            .findFirst()
            .orElseThrow(
                () ->
                    new BadTextException(
                        "is '"
                            + text
                            + "'; allowed: "
                            + Arrays.stream(type.getEnumConstants())
                                .map(word)
                                .collect(Collectors.joining(", "))));
  }

  /** The name by which an instrument is reached. */
  static Reading<String> resource() {
    return text -> {
      new InstrumentChoice.Real(text)
          .complaint()
          .ifPresent(
              complaint -> {
                throw new BadTextException("cannot be used: " + complaint);
              });
      return text;
    };
  }

  /** A day, or unknown. */
  static Reading<String> date() {
    return text -> {
      try {
        return text.equals(UnitFields.UNKNOWN) ? text : LocalDate.parse(text).toString();
      } catch (DateTimeParseException e) {
        throw new BadTextException(
            "is '" + text + "'; allowed: a date such as 2026-11-25, or " + UnitFields.UNKNOWN);
      }
    };
  }

  /** The number as it is typed. */
  static String plain(double number) {
    return BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
  }
}
