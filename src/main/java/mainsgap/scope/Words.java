package mainsgap.scope;

import java.math.BigDecimal;
import java.math.MathContext;

/** Numbers as the sentences of this room write them. */
final class Words {
  private static final String[] PREFIXES = {"n", "µ", "m", "", "k", "M", "G"};

  private Words() {}

  /** At most four significant digits with a prefix: {@code 12.9 ms}, {@code 100 kS/s}. */
  static String of(double value, String unit) {
    if (value == 0 || !Double.isFinite(value)) {
      return plain(value, 4) + " " + unit;
    }
    int thousands = (int) Math.floor(Math.log10(Math.abs(value) * (1 + 1e-12)) / 3);
    int at = Math.max(0, Math.min(PREFIXES.length - 1, thousands + 3));
    return plain(value / Math.pow(10, 3.0 * (at - 3)), 4) + " " + PREFIXES[at] + unit;
  }

  /** Volts without a prefix, to the volt where they are many: {@code 325 V}. */
  static String volts(double value) {
    return plain(value, 3) + " V";
  }

  /** The number to so many significant digits, without an exponent. */
  static String plain(double value, int digits) {
    if (!Double.isFinite(value)) {
      return Double.toString(value);
    }
    BigDecimal rounded = new BigDecimal(value).round(new MathContext(digits));
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }
}
