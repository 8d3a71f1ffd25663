package mainsgap.cli;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;
import mainsgap.statistics.StatedValue;

/** Numbers with units for people. */
final class Readings {
  private static final MathContext FOUR_DIGITS = new MathContext(4);

  private Readings() {}

  /** The value in milliseconds to the last digit that its uncertainty leaves. */
  static String millis(double value, double uncertaintyMillis) {
    return uncertaintyMillis > 0
        ? StatedValue.of(value, uncertaintyMillis).value() + " ms"
        : millis(value);
  }

  /** The uncertainty in milliseconds with its sign. */
  static String uncertaintyMillis(double uncertaintyMillis) {
    return "± "
        + (uncertaintyMillis > 0
            ? StatedValue.of(0, uncertaintyMillis).uncertainty() + " ms"
            : millis(uncertaintyMillis));
  }

  /** A number in a form such as "%+.1f %%"; what rounds to zero has no sign. */
  static String formed(String form, double value) {
    String text = String.format(Locale.ROOT, form, value);
    boolean isZero = text.chars().noneMatch(one -> one >= '1' && one <= '9');
    return isZero ? String.format(Locale.ROOT, form.replace("%+", "%"), 0.0) : text;
  }

  /** How many of a thing, in the singular where it is one. */
  static String counted(int number, String thing) {
    return number + " " + thing + (number == 1 ? "" : "s");
  }

  /** A figure in milliseconds without an uncertainty of its own, to four digits. */
  static String millis(double value) {
    BigDecimal rounded = BigDecimal.valueOf(value).round(FOUR_DIGITS);
    return rounded.stripTrailingZeros().toPlainString() + " ms";
  }
}
