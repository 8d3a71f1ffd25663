package mainsgap.transfer.gap;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Against shares counted in drawn sums, and the factors of JCGM 100, annex G, from memory. */
class CoverageFactorTest {
  private static final int DRAWS = 200_000;

  @Test
  void normalSumHasTheFactorOfTheNormalDistribution() {
    assertEquals(1.96, CoverageFactor.of95Percent(1), 1e-3);
  }

  @Test
  void oneRectangularCauseIsHeldByLessThanItsHalfWidth() {
    assertEquals(0.95 * Math.sqrt(3), CoverageFactor.of95Percent(1, 1), 1e-3);
  }

  /** 1 - (1 - u)^2 = 0.95 of a triangle from -1 to 1, whose standard deviation is 1/sqrt(6). */
  @Test
  void twoRectangularCausesAlikeAreHeldAsTheirTriangle() {
    double half = Math.sqrt(0.5);

    double found = CoverageFactor.of95Percent(1, half, half);

    assertEquals((1 - Math.sqrt(0.05)) * Math.sqrt(6), found, 3e-3);
  }

  @ParameterizedTest
  @CsvSource({"1, 1, 1", "1, 1, 0.3", "1, 0, 0.5", "1, 0, 0.2", "1, 0.5, 0.1", "0.3, 0.1, 1"})
  void sumOfRectangularAndNormalCausesIsHeldIn95OutOf100(double one, double other, double normal) {
    double combined = Math.sqrt(one * one + other * other + normal * normal);
    double halfWidth = CoverageFactor.of95Percent(combined, one, other) * combined;
    Random random = new Random(1);

    long held =
        DoubleStream.generate(
                () ->
                    rectangular(random, one)
                        + rectangular(random, other)
                        + normal * random.nextGaussian())
            .limit(DRAWS)
            .filter(error -> Math.abs(error) <= halfWidth)
            .count();

    assertEquals(0.95, (double) held / DRAWS, 0.008);
  }

  private static double rectangular(Random random, double standard) {
    return Math.sqrt(3) * standard * (2 * random.nextDouble() - 1);
  }
}
