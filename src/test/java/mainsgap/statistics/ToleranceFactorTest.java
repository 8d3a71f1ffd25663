package mainsgap.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ToleranceFactorTest {

  /**
   * The example of NIST/SEMATECH e-Handbook 7.2.6.3 (N = 43, coverage 0.90, confidence 0.99). The
   * handbook prints Natrella's approximation 1.8752; the exact value is SciPy's nct.ppf.
   */
  @Test
  void handbookExampleOneSided() {
    double k1 = ToleranceFactor.upper(43, 0.90, 0.99);
    assertEquals(1.8752, k1, 0.0015, "Natrella's approximation");
    assertEquals(1.87395, k1, 5e-6, "exact");
  }

  /** The same example's upper bound, 97.07 + k1 0.0268 = 97.120. */
  @Test
  void handbookExampleBound() {
    Sample sample = new Sample(43, 97.07, 0.0268, 97.2, 97.07);
    assertEquals(97.1202, ToleranceFactor.upperBound(sample, 0.90, 0.99), 5e-5);
  }

  /** NIST/SEMATECH e-Handbook 7.2.6.3 prints 2.2173 for Howe's factor. */
  @Test
  void handbookExampleTwoSided() {
    assertEquals(2.2173, ToleranceFactor.twoSided(43, 0.90, 0.99), 1e-4);
  }

  /** One-sided factors computed with SciPy (nct.ppf), two-sided with Howe's formula in SciPy. */
  @ParameterizedTest
  @CsvSource({
    "3, 7.6559, 6.1553, 10.5527, 9.9928",
    "5, 4.2027, 3.4066, 5.7411, 5.0935",
    "8, 3.1873, 2.5819, 4.3539, 3.7360",
    "10, 2.9110, 2.3546, 3.9811, 3.3819",
    "15, 2.5660, 2.0684, 3.5201, 2.9548",
    "20, 2.3960, 1.9260, 3.2952, 2.7523",
    "30, 2.2198, 1.7773, 3.0639, 2.5496",
    "50, 2.0650, 1.6456, 2.8624, 2.3788",
    "100, 1.9265, 1.5267, 2.6840, 2.2328"
  })
  void factorsOfTheTable(int n, double k9595, double k9095, double k9995, double howe9595) {
    assertEquals(k9595, ToleranceFactor.upper(n, 0.95, 0.95), 5.1e-5);
    assertEquals(k9095, ToleranceFactor.upper(n, 0.90, 0.95), 5.1e-5);
    assertEquals(k9995, ToleranceFactor.upper(n, 0.99, 0.95), 5.1e-5);
    assertEquals(howe9595, ToleranceFactor.twoSided(n, 0.95, 0.95), 5.1e-5);
  }

  /**
   * The harshest case, one degree of freedom: 26.260 is the factor of the usual printed tables
   * (from memory).
   */
  @Test
  void twoReadingsGiveTheFactorOfPrintedTables() {
    assertEquals(26.260, ToleranceFactor.upper(2, 0.95, 0.95), 5e-4);
  }

  /** For many readings the factor tends to the normal quantile, 1.64485 for 95 %. */
  @Test
  void manyReadingsTendToTheNormalQuantile() {
    double z = 1.644854;
    double n = 20_000;
    // first-order expansion of the quantile (Natrella's formula to order 1/sqrt n)
    double expected = z + z * Math.sqrt((1 + z * z / 2) / n);
    assertEquals(expected, ToleranceFactor.upper(20_000, 0.95, 0.95), 5e-4);
  }

  /** Ten transfer times in ms and their 95/95 bound, computed with SciPy. */
  @Test
  void boundOfACampaign() {
    Sample sample = Sample.of(new double[] {8.6, 9.4, 9.1, 8.9, 9.8, 9.2, 8.7, 9.5, 9.0, 9.3});
    assertEquals(9.15, sample.mean(), 1e-12);
    assertEquals(0.36893, sample.standardDeviation(), 5e-6);
    assertEquals(9.8, sample.max());
    assertEquals(10.224, ToleranceFactor.upperBound(sample, 0.95, 0.95), 5e-4);
  }

  /** P(T <= t) with delta = 0 is Student's t: 0.95 at 1.8331 with 9 degrees (any t table). */
  @Test
  void withoutNoncentralityItIsStudentsT() {
    assertEquals(0.95, NoncentralT.cumulativeProbability(1.833113, 9, 0), 1e-7);
    assertEquals(0.5, NoncentralT.cumulativeProbability(0, 1, 0), 1e-9);
  }

  @ParameterizedTest
  @CsvSource({"1, 0.95, 0.95", "10, 0, 0.95", "10, 1, 0.95", "10, 0.95, NaN", "10, 0.95, 1"})
  void whatHasNoFactorIsRefused(int n, double coverage, double confidence) {
    assertThrows(
        IllegalArgumentException.class, () -> ToleranceFactor.upper(n, coverage, confidence));
  }
}
