package mainsgap.transfer.bank;

import org.apache.commons.math3.special.Erf;

/**
 * How far off the most likely place of a change lies, where the models on both sides are known:
 * where two places are told apart by the energy E, the log-likelihood is a walk with the drift -E/2
 * and the variance E to both sides of the true place, and its highest point follows the law of Yao
 * (1987) and Bhattacharya (1994), here from memory: {@code P(|T| <= x) = 1 + 2 sqrt(x / 2pi)
 * e^(-x/8) - (x + 5) F(-sqrt(x)/2) + 3 e^x F(-3 sqrt(x)/2)}, F the normal distribution. Its mean
 * square is 26, as that of a small step is known to be.
 */
final class ChangePointLaw {
  /** From here on the share is 1 to five digits, and e^x too large a number. */
  private static final double ALL = 100;

  private ChangePointLaw() {}

  /** The share of places within an energy of the true one. */
  static double within(double energy) {
    if (energy <= 0) {
      return 0;
    }
    if (energy > ALL) {
      return 1;
    }
    double root = Math.sqrt(energy);
    return 1
        + 2 * root / Math.sqrt(2 * Math.PI) * Math.exp(-energy / 8)
        - (energy + 5) * normal(-root / 2)
        + 3 * Math.exp(energy) * normal(-1.5 * root);
  }

  private static double normal(double z) {
    return 0.5 * Erf.erfc(-z / Math.sqrt(2));
  }
}
