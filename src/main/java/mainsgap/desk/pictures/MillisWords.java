package mainsgap.desk.pictures;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;
import java.util.OptionalDouble;
import mainsgap.bench.TrialReport;
import mainsgap.statistics.StatedValue;
import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.NoInterruption;
import mainsgap.transfer.outcome.NoReturn;
import mainsgap.transfer.outcome.Outcome;

/** Times and counts in the pictures, as words. */
public final class MillisWords {
  private static final MathContext FOUR_DIGITS = new MathContext(4);

  private MillisWords() {}

  /** The value and its uncertainty to the same digit. */
  static String stated(double millis, double uncertaintyMillis) {
    if (!(uncertaintyMillis > 0) || !Double.isFinite(uncertaintyMillis)) {
      return millis(millis);
    }
    StatedValue stated = StatedValue.of(millis, uncertaintyMillis);
    return stated.value() + " ms ± " + stated.uncertainty() + " ms";
  }

  /** A time to four digits. */
  public static String millis(double value) {
    BigDecimal rounded = BigDecimal.valueOf(value).round(FOUR_DIGITS);
    return (value == 0 ? "0" : rounded.stripTrailingZeros().toPlainString()) + " ms";
  }

  /** Half of an interval, to two digits. */
  static String uncertainty(double millis) {
    return StatedValue.of(0, millis).uncertainty() + " ms";
  }

  /** How a trial ended. */
  static String outcome(Outcome outcome) {
    return switch (outcome.kind()) {
      case MEASURED -> {
        Measured measured = (Measured) outcome;
        yield stated(measured.transferMillis(), measured.uncertaintyMillis());
      }
      case NO_RETURN -> {
        NoReturn none = (NoReturn) outcome;
        yield "no return in " + stated(none.atLeastMillis(), none.uncertaintyMillis());
      }
      case NO_INTERRUPTION ->
          "no gap over " + millis(((NoInterruption) outcome).shortestVisibleMillis());
      case REFUSED -> "no time";
    };
  }

  /** A trial in one line. */
  static String trial(TrialReport trial) {
    return "trial "
        + trial.number()
        + ": "
        + outcome(trial.outcome())
        + ", "
        + TrialMark.of(trial).words();
  }

  static String declared(DeclaredClaim claim) {
    return (claim.kind() == DeclaredClaim.Kind.TYPICAL ? "declared as typical: " : "declared: ")
        + claim.asPrinted();
  }

  /** How many of a thing, in the singular where it is one. */
  static String counted(int number, String thing) {
    return number + " " + thing + (number == 1 ? "" : "s");
  }

  /** A phrase as a sentence of its own. */
  static String sentence(String phrase) {
    String ended = ended(phrase);
    return ended.substring(0, 1).toUpperCase(Locale.ROOT) + ended.substring(1);
  }

  /** A phrase with its full stop. */
  static String ended(String phrase) {
    boolean isEnded = !phrase.isEmpty() && ".?!".indexOf(phrase.charAt(phrase.length() - 1)) >= 0;
    return isEnded ? phrase : phrase + ".";
  }

  /** Where on the wave of the supply before it fell; empty where there is none. */
  public static OptionalDouble angleDegrees(Outcome outcome) {
    return switch (outcome.kind()) {
      case MEASURED -> OptionalDouble.of(((Measured) outcome).pointOnWaveDegrees());
      case NO_RETURN -> OptionalDouble.of(((NoReturn) outcome).pointOnWaveDegrees());
      case NO_INTERRUPTION -> OptionalDouble.of(((NoInterruption) outcome).pointOnWaveDegrees());
      case REFUSED -> OptionalDouble.empty();
    };
  }
}
