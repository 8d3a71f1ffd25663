package mainsgap.bench;

import java.math.BigDecimal;

/** Words for numbers. */
final class Words {
  private Words() {}

  /** The number without an exponent and without zeros at its end. */
  static String plain(double number) {
    return BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
  }

  /** What a stranger said, on one line and without what would move a terminal's cursor. */
  static String printable(String said) {
    return said.replaceAll("[\\p{Cntrl}\\p{Cf}\\p{Co}\\p{Cs}]+", " ");
  }
}
