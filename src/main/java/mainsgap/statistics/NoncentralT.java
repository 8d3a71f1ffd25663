package mainsgap.statistics;

import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.special.Gamma;

/** Student's t distribution with a noncentrality. */
final class NoncentralT {
  private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

  /**
   * Beyond so many standard deviations of the chi factor its density is below 1e-14 of the peak.
   */
  private static final double REACH = 10;

  /**
   * Panels of 16 points: the distribution function is then good to 1e-9 for 1 to 10,000 degrees.
   */
  private static final int PANELS = 80;

  private static final int POINTS = 16;

  private static final GaussIntegratorFactory GAUSS = new GaussIntegratorFactory();

  private NoncentralT() {}

  /**
   * The probability that T = (Z + delta) / X is at most {@code t}, with Z standard normal and X the
   * root of a chi-squared variable over its {@code nu} degrees of freedom: the integral over x of
   * Phi(t x - delta) g(x), g the density of X. Unlike the usual series it does not underflow at
   * large delta.
   *
   * @param t any finite value
   * @param nu degrees of freedom, above 0
   * @param delta the noncentrality, finite
   */
  static double cumulativeProbability(double t, double nu, double delta) {
    double spread = 1 / Math.sqrt(2 * nu);
    double low = Math.max(0, 1 - REACH * spread);
    double width = (1 + REACH * spread - low) / PANELS;
    double logScale = Math.log(2) + nu / 2 * Math.log(nu / 2) - Gamma.logGamma(nu / 2);
    double sum = 0;
    for (int panel = 0; panel < PANELS; panel++) {
      double from = low + panel * width;
      GaussIntegrator integrator = GAUSS.legendre(POINTS, from, from + width);
      sum +=
          integrator.integrate(
              x -> {
                double logDensity = logScale + (nu - 1) * Math.log(x) - nu * x * x / 2;
                return NORMAL.cumulativeProbability(t * x - delta) * Math.exp(logDensity);
              });
    }
    return Math.min(1, sum);
  }
}
