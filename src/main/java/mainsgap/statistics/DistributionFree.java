package mainsgap.statistics;

import org.apache.commons.math3.distribution.BetaDistribution;

/**
 * Bounds that hold for every continuous distribution, from order statistics and counts alone
 * (NIST/SEMATECH e-Handbook 7.2.6.4).
 */
public final class DistributionFree {
  private DistributionFree() {}

  /**
   * The number of readings from which their {@code rank}-th largest is an upper tolerance bound:
   * the smallest n with P(at least {@code rank} of n lie above the quantile 'coverage') >=
   * confidence. Rank 2 is also the count for the two-sided bound from minimum to maximum.
   *
   * @param coverage the share of the population below the bound, between 0 and 1
   * @param confidence between 0 and 1
   * @param rank 1 for the maximum, 2 for the second largest, and so on
   */
  public static int readingsNeeded(double coverage, double confidence, int rank) {
    Probability.check("the confidence", confidence);
    int n = rank;
    while (confidence(n, coverage, rank) < confidence) {
      n++;
    }
    return n;
  }

  /** The confidence with which the {@code rank}-th largest of n readings covers 'coverage'. */
  public static double confidence(int n, double coverage, int rank) {
    Probability.check("the coverage", coverage);
    if (rank < 1 || rank > n) {
      throw new IllegalArgumentException("the rank is 1 to " + n + ", found " + rank);
    }
    // the share below the rank-th largest is Beta(n - rank + 1, rank)
    return 1 - new BetaDistribution(null, n - rank + 1.0, rank).cumulativeProbability(coverage);
  }

  /** The share of the population that the maximum of n readings covers: (1 - confidence)^(1/n). */
  public static double coverageOfMaximum(int n, double confidence) {
    Probability.check("the confidence", confidence);
    if (n < 1) {
      throw new IllegalArgumentException("a maximum needs at least 1 reading, found " + n);
    }
    return Math.pow(1 - confidence, 1.0 / n);
  }

  /**
   * The one-sided upper limit of a failure rate after Clopper and Pearson.
   *
   * @param failures 0 to n
   * @param n the number of trials, at least 1
   * @param confidence between 0 and 1
   */
  public static double failureRateUpperLimit(int failures, int n, double confidence) {
    Probability.check("the confidence", confidence);
    if (n < 1 || failures < 0 || failures > n) {
      throw new IllegalArgumentException(
          "failures are 0 to the number of trials, found " + failures + " of " + n);
    }
    if (failures == n) {
      return 1;
    }
    return new BetaDistribution(null, failures + 1.0, n - failures)
        .inverseCumulativeProbability(confidence);
  }
}
