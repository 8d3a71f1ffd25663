package mainsgap.transfer.claim;

import java.util.OptionalDouble;
import org.apache.commons.math3.distribution.NormalDistribution;

/** How probable it is that the true time is within a declared one (JCGM 106, section 7). */
public final class Conformance {
  private static final NormalDistribution STANDARD_NORMAL = new NormalDistribution(null, 0, 1);

  private Conformance() {}

  /**
   * The probability of conformance pc = Phi((TL - y) / u) of a normally distributed time with one
   * upper limit.
   *
   * @param limitMillis TL
   * @param measuredMillis y
   * @param standardMillis u, above 0
   * @throws IllegalArgumentException if an argument is not finite, or u is not above 0
   */
  public static double probability(
      double limitMillis, double measuredMillis, double standardMillis) {
    if (!(standardMillis > 0)
        || !Double.isFinite(standardMillis)
        || !Double.isFinite(measuredMillis)
        || !Double.isFinite(limitMillis)) {
      throw new IllegalArgumentException(
          "a probability of conformance needs a limit, a time and a standard uncertainty above 0 ms,"
              + " found "
              + limitMillis
              + ", "
              + measuredMillis
              + " and "
              + standardMillis);
    }
    return STANDARD_NORMAL.cumulativeProbability((limitMillis - measuredMillis) / standardMillis);
  }

  /** The same against a claim; empty where the time or its u is not a finite number. */
  static OptionalDouble of(double measuredMillis, double standardMillis, DeclaredClaim claim) {
    return standardMillis > 0 && Double.isFinite(standardMillis) && Double.isFinite(measuredMillis)
        ? OptionalDouble.of(probability(claim.millis(), measuredMillis, standardMillis))
        : OptionalDouble.empty();
  }
}
