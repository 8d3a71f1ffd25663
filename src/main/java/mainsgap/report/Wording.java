package mainsgap.report;

import java.math.BigDecimal;
import java.math.MathContext;
import java.text.Bidi;
import java.util.Locale;
import mainsgap.signal.Event;
import mainsgap.transfer.outcome.MeasuringTask;

/** Words and numbers in figures. */
public final class Wording {
  private static final MathContext FOUR_DIGITS = new MathContext(4);

  /** Unicode's marks around a text whose direction may be another (UAX #9). */
  private static final String FIRST_STRONG_ISOLATE = "\u2068";

  private static final String POP_ISOLATE = "\u2069";

  private Wording() {}

  /** A stranger's text on one line that cannot turn round the text beside it. */
  public static String isolated(String text) {
    String plain =
        text.replaceAll(
            "[\\p{Cc}\\p{Cs}\\p{Co}\\u2028-\\u202E\\u2066-\\u2069\\uFFFE\\uFFFF]+", " ");
    boolean isMixed = Bidi.requiresBidi(plain.toCharArray(), 0, plain.length());
    return isMixed ? FIRST_STRONG_ISOLATE + plain + POP_ISOLATE : plain;
  }

  /** A number to four digits, without an exponent. */
  public static String plain(double value) {
    return value == 0
        ? "0"
        : BigDecimal.valueOf(value).round(FOUR_DIGITS).stripTrailingZeros().toPlainString();
  }

  /** What stands in the place of rows for which there is no room. */
  static String moreUnits(int number) {
    return Readings.counted(number, "more unit") + ": too many for this size of picture and text";
  }

  /** What was measured, such as "loss of mains, 230 V, 50 Hz". */
  public static String task(MeasuringTask task) {
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
