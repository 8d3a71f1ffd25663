package mainsgap.report;

import java.util.Locale;
import mainsgap.statistics.StatedValue;

/** Numbers with units for people. */
public final class Readings {
  private Readings() {}

  /** The value in milliseconds to the last digit that its uncertainty, or scatter, leaves. */
  public static String millis(double value, double uncertaintyMillis) {
    return canBeStated(uncertaintyMillis)
        ? StatedValue.of(value, uncertaintyMillis).value() + " ms"
        : millis(value);
  }

  /** The uncertainty in milliseconds with its sign. */
  public static String uncertaintyMillis(double uncertaintyMillis) {
    return "± "
        + (canBeStated(uncertaintyMillis)
            ? StatedValue.of(0, uncertaintyMillis).uncertainty() + " ms"
            : millis(uncertaintyMillis));
  }

  private static boolean canBeStated(double uncertaintyMillis) {
    return uncertaintyMillis > 0 && Double.isFinite(uncertaintyMillis);
  }

  /** A number in a form such as "%+.1f %%"; what rounds to zero has no sign. */
  public static String formed(String form, double value) {
    String text = String.format(Locale.ROOT, form, value);
    boolean isZero = text.chars().noneMatch(one -> one >= '1' && one <= '9');
    return isZero ? String.format(Locale.ROOT, form.replace("%+", "%"), 0.0) : text;
  }

  /** How many of a thing, in the singular where it is one. */
  public static String counted(int number, String thing) {
    return number + " " + thing + (number == 1 ? "" : "s");
  }

  /** A figure in milliseconds without an uncertainty of its own, to four digits. */
  public static String millis(double value) {
    return Wording.plain(value) + " ms";
  }
}
