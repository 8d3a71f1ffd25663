package mainsgap.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DistributionFreeTest {

  /**
   * Counts computed with SciPy; 29 (90/95) and 299 (99/95) are also those of a published
   * explanation of n = ln(1 - confidence) / ln(coverage), 59 and 93 (95/95) those of common tables.
   */
  @ParameterizedTest
  @CsvSource({
    "0.80, 0.95, 14, 22, 30",
    "0.90, 0.95, 29, 46, 61",
    "0.95, 0.90, 45, 77, 105",
    "0.95, 0.95, 59, 93, 124",
    "0.95, 0.99, 90, 130, 165",
    "0.99, 0.95, 299, 473, 628",
    "0.99, 0.99, 459, 662, 838"
  })
  void readingsNeeded(double coverage, double confidence, int max, int second, int third) {
    assertEquals(max, DistributionFree.readingsNeeded(coverage, confidence, 1));
    assertEquals(second, DistributionFree.readingsNeeded(coverage, confidence, 2));
    assertEquals(third, DistributionFree.readingsNeeded(coverage, confidence, 3));
  }

  /** Clopper-Pearson limits computed with SciPy; no failure gives 1 - 0.05^(1/n). */
  @ParameterizedTest
  @CsvSource({
    "0, 10, 0.259, 0.0005",
    "0, 20, 0.139, 0.0005",
    "0, 59, 0.0495, 0.00005",
    "1, 30, 0.1486, 0.00005",
    "1, 59, 0.0779, 0.00005",
    "2, 20, 0.2826, 0.00005"
  })
  void failureRateUpperLimit(int failures, int n, double limit, double tolerance) {
    assertEquals(limit, DistributionFree.failureRateUpperLimit(failures, n, 0.95), tolerance);
  }

  @Test
  void failuresOnlyLeaveNoLimit() {
    assertEquals(1, DistributionFree.failureRateUpperLimit(3, 3, 0.95));
  }

  /** 74.1, 86.1 and 90.5 %: 0.05^(1/n) worked out by hand. */
  @ParameterizedTest
  @CsvSource({"10, 0.741", "20, 0.861", "30, 0.905"})
  void coverageOfMaximum(int n, double coverage) {
    assertEquals(coverage, DistributionFree.coverageOfMaximum(n, 0.95), 5e-4);
  }

  @Test
  void nonsenseIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> DistributionFree.readingsNeeded(0.95, 1, 1));
    assertThrows(IllegalArgumentException.class, () -> DistributionFree.readingsNeeded(1, 0.95, 1));
    assertThrows(
        IllegalArgumentException.class, () -> DistributionFree.failureRateUpperLimit(4, 3, 0.95));
  }
}
