package mainsgap.scpi;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class NumberTextTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "1.5,-2E-3, +7 | 1.5,-0.002,7",
        "1.5,-2E-3,7, | 1.5,-0.002,7",
        "#213 1.5,-2E-3,7 | 1.5,-0.002,7",
        "#9000000013 1.5,-2E-3,7 | 1.5,-0.002,7",
        ":CURV 1.5,-2E-3,7 | 1.5,-0.002,7",
        ":CURV #213 1.5,-2E-3,7 | 1.5,-0.002,7",
        "5 | 5",
        "1,9.91E37,NAN,-9.9E37 | 1,NaN,NaN,-Infinity"
      })
  void numbersStandBetweenCommas(String text, String numbers) {
    double[] expected = Stream.of(numbers.split(",")).mapToDouble(Double::parseDouble).toArray();
    assertArrayEquals(expected, NumberText.parse(text));
  }

  @ParameterizedTest
  @ValueSource(strings = {"1,x,3", "1;2", "10mV,20mV"})
  void whatIsNoNumberIsRefused(String text) {
    assertThrows(ScpiException.class, () -> NumberText.parse(text));
  }
}
