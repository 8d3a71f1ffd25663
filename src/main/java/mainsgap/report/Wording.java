package mainsgap.report;

import java.math.BigDecimal;
import java.math.MathContext;
import java.text.Bidi;
import java.util.Locale;
import mainsgap.signal.Event;
import mainsgap.statistics.StatedValue;
import mainsgap.transfer.outcome.MeasuringTask;

/** Words and numbers in figures. */
final class Wording {
  private static final MathContext FOUR_DIGITS = new MathContext(4);

  /** Unicode's marks around a text whose direction may be another (UAX #9). */
  private static final String FIRST_STRONG_ISOLATE = "\u2068";

  private static final String POP_ISOLATE = "\u2069";

  private Wording() {}

  /** A stranger's text on one line that cannot turn round the text beside it. */
  static String isolated(String text) {
    String plain =
        text.replaceAll("[\\p{Cntrl}\\p{Cs}\\p{Co}\\u202A-\\u202E\\u2066-\\u2069]+", " ");
    boolean isMixed = Bidi.requiresBidi(plain.toCharArray(), 0, plain.length());
    return isMixed ? FIRST_STRONG_ISOLATE + plain + POP_ISOLATE : plain;
  }

  /** A time to the last digit that its uncertainty or scatter leaves. */
  static String millis(double value, double uncertaintyMillis) {
    return uncertaintyMillis > 0 && Double.isFinite(uncertaintyMillis)
        ? StatedValue.of(value, uncertaintyMillis).value() + " ms"
        : millis(value);
  }

  /** A time to four digits. */
  static String millis(double value) {
    return plain(value) + " ms";
  }

  /** A number to four digits, without an exponent. */
  static String plain(double value) {
    return value == 0
        ? "0"
        : BigDecimal.valueOf(value).round(FOUR_DIGITS).stripTrailingZeros().toPlainString();
  }

  /** How many of a thing, in the singular where it is one. */
  static String counted(int number, String thing) {
    return number + " " + thing + (number == 1 ? "" : "s");
  }

  /** What stands in the place of rows for which there is no room. */
  static String moreUnits(int number) {
    return counted(number, "more unit") + ": too many for this size of picture and text";
  }

  /** What was measured, such as "loss of mains, 230 V, 50 Hz". */
  static String task(MeasuringTask task) {
    return String.format(
        Locale.ROOT,
        "%s, %s V, %s Hz",
        event(task.event()),
        plain(task.nominalVolts()),
        plain(task.nominalFrequencyHertz()));
  }

  private static String event(Event event) {
    return switch (event) {
      case LOSS -> "loss of mains";
      case RESTORATION -> "restoration of mains";
    };
  }
}
