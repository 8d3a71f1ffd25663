package mainsgap.statistics;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * A value as it is stated: its expanded uncertainty with two significant digits, the value rounded
 * to the same place (JCGM 100, 7.2.6). Plain decimals with a point, no unit.
 *
 * @param value such as "9.236"
 * @param uncertainty such as "0.012"
 */
public record StatedValue(String value, String uncertainty) {
  private static final MathContext TWO_DIGITS = new MathContext(2, RoundingMode.HALF_UP);

  /**
   * Rounds {@code value} by its {@code uncertainty}.
   *
   * @throws IllegalArgumentException if the value is not finite or the uncertainty not above 0 and
   *     finite
   */
  public static StatedValue of(double value, double uncertainty) {
    if (!Double.isFinite(value) || !(uncertainty > 0) || Double.isInfinite(uncertainty)) {
      throw new IllegalArgumentException(
          "only a finite value with an uncertainty above 0 can be rounded by it, found "
              + value
              + " ± "
              + uncertainty);
    }
    // setScale pads where the double printed one digit only: 0.5 is stated as 0.50
    BigDecimal u = BigDecimal.valueOf(uncertainty).round(TWO_DIGITS);
    u = u.setScale(u.scale() + 2 - u.precision());
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(u.scale(), RoundingMode.HALF_UP);
    return new StatedValue(rounded.toPlainString(), u.toPlainString());
  }

  /** The value and its uncertainty, such as "9.236 ± 0.012". */
  @Override
  public String toString() {
    return value + " ± " + uncertainty;
  }
}
