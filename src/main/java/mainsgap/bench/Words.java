package mainsgap.bench;

import java.math.BigDecimal;
import java.util.Locale;

/** Words for numbers. */
final class Words {
  private Words() {}

  /** The number without an exponent and without zeros at its end. */
  static String plain(double number) {
    return BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
  }

  /** A constant as files write it: small, with hyphens. */
  static String hyphened(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** What a stranger said, on one line and without what would move a terminal's cursor. */
  static String printable(String said) {
    return said.replaceAll("[\\p{Cntrl}\\p{Cf}\\p{Co}\\p{Cs}]+", " ");
  }
}
