package mainsgap.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HarmonicModelTest {
  private static final HarmonicModel MODEL =
      new HarmonicModel(
          0.4,
          50.02,
          2,
          -0.3,
          new double[] {300, 0, 9, 0, -4},
          new double[] {90, 1, 0, 2, 5},
          1,
          0);

  @ParameterizedTest
  @CsvSource({"0, 1e-6, 1000", "-3, 1e-4, 129", "0.1, 1e-5, 64", "0, 1e-3, 1", "0, 1, 0"})
  void voltagesInARowAreThoseOfEachTime(double first, double interval, int count) {
    double[] volts = MODEL.voltsEvery(interval, first, count);

    assertEquals(count, volts.length);
    for (int i = 0; i < count; i++) {
      assertEquals(MODEL.voltsAt(first + i * interval), volts[i], 1e-8);
    }
  }
}
