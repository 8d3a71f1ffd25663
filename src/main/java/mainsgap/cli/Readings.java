package mainsgap.cli;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers with units for people. */
final class Readings {
  private Readings() {}

  /** The value to the last digit that its uncertainty leaves. */
  static String value(double value, double uncertainty, String unit) {
    return BigDecimal.valueOf(value)
            .setScale(decimals(uncertainty), RoundingMode.HALF_EVEN)
            .toPlainString()
        + " "
        + unit;
  }

  /** The uncertainty with its sign, to two digits. */
  static String uncertainty(double uncertainty, String unit) {
    return "± "
        + BigDecimal.valueOf(uncertainty)
            .setScale(decimals(uncertainty), RoundingMode.HALF_EVEN)
            .toPlainString()
        + " "
        + unit;
  }

  /** A figure without an uncertainty of its own, to four digits. */
  static String plain(double value, String unit) {
    return BigDecimal.valueOf(value).round(new MathContext(4)).toPlainString() + " " + unit;
  }

  private static int decimals(double uncertainty) {
    if (!(uncertainty > 0)) {
      return 3;
    }
    return Math.max(0, 1 - (int) Math.floor(Math.log10(uncertainty)));
  }
}
