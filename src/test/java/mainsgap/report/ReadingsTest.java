package mainsgap.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReadingsTest {

  @ParameterizedTest
  @CsvSource({
    "8.41678, 0.0523, 8.417 ms, ± 0.052 ms",
    "8.41678, 1.26, 8.4 ms, ± 1.3 ms",
    "8.5, 0.5, 8.50 ms, ± 0.50 ms",
    "8.41678, 0, 8.417 ms, ± 0 ms",
  })
  void valueAndUncertaintyEndAtTheSameDigit(
      double value, double uncertainty, String expectedValue, String expectedUncertainty) {
    assertEquals(expectedValue, Readings.millis(value, uncertainty));
    assertEquals(expectedUncertainty, Readings.uncertaintyMillis(uncertainty));
  }

  @ParameterizedTest
  @CsvSource({"9.123456, 9.123 ms", "20, 20 ms", "1234.56, 1235 ms", "0.000123456, 0.0001235 ms"})
  void aFigureAloneHasFourDigits(double value, String expected) {
    assertEquals(expected, Readings.millis(value));
  }
}
