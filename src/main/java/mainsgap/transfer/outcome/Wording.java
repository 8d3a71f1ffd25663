package mainsgap.transfer.outcome;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;
import mainsgap.statistics.StatedValue;
import org.jspecify.annotations.Nullable;

/** Times and claims as the reasons of verdicts say them. */
public final class Wording {
  /** From this difference on, a transfer time is never told without its usable time. */
  private static final double WORTH_TELLING_MILLIS = 1;

  private static final MathContext FOUR_DIGITS = new MathContext(4);

  private Wording() {}

  /** A time with its uncertainty, such as "9.236 ms ± 0.012 ms". */
  public static String time(double millis, double uncertaintyMillis) {
    if (!canBeStated(millis, uncertaintyMillis)) {
      return millis + " ms ± " + uncertaintyMillis + " ms";
    }
    StatedValue stated = StatedValue.of(millis, uncertaintyMillis);
    return stated.value() + " ms ± " + stated.uncertainty() + " ms";
  }

  /** A time rounded by its uncertainty, without it. */
  public static String roundedTime(double millis, double uncertaintyMillis) {
    return canBeStated(millis, uncertaintyMillis)
        ? StatedValue.of(millis, uncertaintyMillis).value() + " ms"
        : millis + " ms";
  }

  /** A time to a microsecond. */
  public static String time(double millis) {
    return String.format(Locale.ROOT, "%.3f ms", millis);
  }

  /** A duration without uncertainty to four digits, such as "16.67 ms" or "10 s". */
  public static String span(double millis) {
    return millis >= 1e3 ? plain(millis / 1e3) + " s" : plain(millis) + " ms";
  }

  /** A finite number to four digits, without an exponent. */
  public static String plain(double value) {
    return value == 0
        ? "0"
        : BigDecimal.valueOf(value).round(FOUR_DIGITS).stripTrailingZeros().toPlainString();
  }

  /** A probability in per cent; what would round to none or all is told as a bound. */
  public static String probability(double share) {
    double percent = 1e2 * share;
    if (percent < 0.01) {
      return "below 0.01 %";
    }
    return percent > 99.99 ? "above 99.99 %" : String.format(Locale.ROOT, "%.2f %%", percent);
  }

  /** What has to be told beside a transfer time, or nothing. */
  public static String usable(double transferMillis, @Nullable Double usableMillis) {
    if (usableMillis == null) {
      return "; the voltage does not settle within 10 % in the record";
    }
    return usableMillis - transferMillis > WORTH_TELLING_MILLIS
        ? "; usable after " + time(usableMillis)
        : "";
  }

  private static boolean canBeStated(double value, double uncertainty) {
    return Double.isFinite(value) && uncertainty > 0 && Double.isFinite(uncertainty);
  }
}
