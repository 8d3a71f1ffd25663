package mainsgap.statistics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SampleTest {

  /** NIST StRD univariate, NumAcc1: certified mean 10000002, standard deviation 1. */
  @Test
  void numAcc1() {
    Sample sample = Sample.of(new double[] {10000001, 10000003, 10000002});
    assertEquals(10000002, sample.mean());
    assertEquals(1, sample.standardDeviation());
    assertEquals(10000003, sample.max());
    assertEquals(10000002, sample.median());
  }

  /**
   * NIST StRD univariate, NumAcc2 to 4: certified means and standard deviation 0.1. The tolerance
   * is what the nearest doubles of the data themselves leave at that size.
   */
  @ParameterizedTest
  @CsvSource({
    "1.2, 1.1, 1.3, 1e-14",
    "1000000.2, 1000000.1, 1000000.3, 1e-10",
    "10000000.2, 10000000.1, 10000000.3, 1e-9"
  })
  void numAcc2To4(double first, double odd, double even, double tolerance) {
    double[] readings = new double[1001];
    readings[0] = first;
    for (int i = 1; i < readings.length; i++) {
      readings[i] = i % 2 == 1 ? odd : even;
    }
    Sample sample = Sample.of(readings);
    assertEquals(first, sample.mean(), tolerance);
    assertEquals(0.1, sample.standardDeviation(), tolerance);
  }

  @Test
  void medianOfAnEvenCountIsTheMeanOfTheMiddleTwo() {
    double[] readings = {4, 1, 3, 10};
    assertEquals(3.5, Sample.of(readings).median());
    assertArrayEquals(new double[] {4, 1, 3, 10}, readings, "the readings stay as they are");
  }

  @Test
  void oneReadingHasNoStandardDeviation() {
    assertEquals(Double.NaN, Sample.of(new double[] {7}).standardDeviation());
  }

  @Test
  void equalReadingsHaveNoSpread() {
    assertEquals(0, Sample.of(new double[] {0.1, 0.1, 0.1}).standardDeviation(), 1e-17);
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY})
  void whatIsNotFiniteIsRefused(double reading) {
    assertThrows(IllegalArgumentException.class, () -> Sample.of(new double[] {1, reading}));
  }

  @Test
  void noReadingIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> Sample.of(new double[0]));
  }
}
