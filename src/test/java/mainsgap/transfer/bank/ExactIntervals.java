package mainsgap.transfer.bank;

import java.util.Arrays;
import org.apache.commons.math3.special.Erf;

/** What intervals of 95 % would show over many captures, were each one exact. */
final class ExactIntervals {
  /** Of a normal distribution, JCGM 100 annex G. */
  private static final double COVERAGE_FACTOR = 1.95996;

  private static final int HALVINGS = 60;

  private ExactIntervals() {}

  /**
   * The median of U over the median of |error| for normal errors with a standard deviation of U /
   * 1.96 each; NaN where there are none.
   */
  static double padding(Spread uncertainties) {
    double low = 0;
    double high = uncertainties.most();
    for (int k = 0; k < HALVINGS; k++) {
      double middle = (low + high) / 2;
      if (shareWithin(uncertainties, middle) < 0.5) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return uncertainties.median() / high;
  }

  private static double shareWithin(Spread uncertainties, double error) {
    return Arrays.stream(uncertainties.ascending())
        .map(u -> Erf.erf(error * COVERAGE_FACTOR / (u * Math.sqrt(2))))
        .average()
        .orElse(Double.NaN);
  }
}
