package mainsgap.desk.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import mainsgap.desk.rig.Reading.BadTextException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ReadingsTest {
  private static final Reading<Double> FACTOR = Readings.number(0.001, 10_000, "");

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {"100|100", "0.5|0.5", "0,5|0.5", "1e3|1000", "1000|1000", "12,34|12.34"})
  void numbersAreReadWithEitherDecimalSign(String text, double expected) {
    assertEquals(expected, FACTOR.of(text));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"0x1p3", "100d", "1f", "NaN", "Infinity", "1.2.3", "1 000", "", "-", "1e"})
  void whatOnlyAProgrammerCallsANumberIsNone(String text) {
    assertThrows(BadTextException.class, () -> FACTOR.of(text));
  }

  @Test
  void commaThatMayPartThousandsIsAskedAbout() {
    BadTextException asked = assertThrows(BadTextException.class, () -> FACTOR.of("1,000"));
    assertEquals(
        "is '1,000', which may be read in two ways: write it without the comma, or with a decimal"
            + " point",
        asked.getMessage());
  }
}
