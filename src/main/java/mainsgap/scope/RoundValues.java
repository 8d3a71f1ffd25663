package mainsgap.scope;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Rounding to values that instruments offer and people read. */
final class RoundValues {
  private static final double[] ONE_TWO_FIVE = {1, 2, 5, 10};

  /** Numbers that a computation has put a hair above a step count as that step. */
  private static final double HAIR = 1e-9;

  private RoundValues() {}

  /** The smallest 1, 2 or 5 times a power of ten that is not below {@code value}, above 0. */
  static double up125(double value) {
    int exponent = (int) Math.floor(Math.log10(value));
    for (double step : ONE_TWO_FIVE) {
      double candidate = decimal(step, exponent);
      if (candidate >= value * (1 - HAIR)) {
        return candidate;
      }
    }
    return decimal(1, exponent + 2);
  }

  /** The largest 1, 2 or 5 times a power of ten that is not above {@code value}, above 0. */
  static double down125(double value) {
    return 1 / up125(1 / value);
  }

  /** {@code value} rounded up to two significant digits. */
  static double upTwoDigits(double value) {
    return new BigDecimal(value * (1 - HAIR))
        .round(new MathContext(2, RoundingMode.UP))
        .doubleValue();
  }

  private static double decimal(double step, int exponent) {
    return BigDecimal.valueOf(step).scaleByPowerOfTen(exponent).doubleValue();
  }
}
