package mainsgap.scpi;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ScpiNumberTest {

  /**
   * NR1, NR2, NR3 of IEEE 488.2 8.7; 9.91E37 and 9.9E37 of SCPI-1999 Vol. 2 7.2.1; rest practice.
   */
  @ParameterizedTest
  @CsvSource({
    "273, 273",
    "+273, 273",
    "0.273, 0.273",
    "2.73E+2, 273",
    ".5, 0.5",
    "5., 5",
    "-1e-3, -0.001",
    "9.89E37, 9.89E37",
    "9.91E37, NaN",
    "9.910000E+37, NaN",
    "9.9E+37, Infinity",
    "-9.9E+37, -Infinity",
    "1E400, Infinity",
    "NAN, NaN",
    "****, NaN",
    "'', NaN",
    "INF, Infinity",
    "-INF, -Infinity",
    "NINF, -Infinity",
    "' 1 ', 1",
    "C1:VDIV 5.00E-01V, 0.5",
    ":WFMPRE:NR_PT 1000, 1000",
    "1.0E-3 S, 0.001",
  })
  void numbersAreRead(String field, double value) {
    assertEquals(value, ScpiNumber.parse(field));
  }

  /** A multiplier before a unit is not guessed at: M is milli to some and mega to others. */
  @ParameterizedTest
  @ValueSource(strings = {"ON", "1.2.3", "500MV", "1d", "0x10", "Infinity2", "1 2", "STOP 1 X"})
  void textIsNotANumber(String field) {
    assertThrows(NumberFormatException.class, () -> ScpiNumber.parse(field));
  }

  /** 0x7E951BEE is 9.91E37 as a 32-bit float (computed by IEEE 754). */
  @Test
  void floatsOfABlockHaveTheSameMeaning() {
    assertEquals(Double.NaN, ScpiNumber.meaning(Float.intBitsToFloat(0x7E951BEE)));
    assertEquals(Double.POSITIVE_INFINITY, ScpiNumber.meaning(9.9E37f));
    assertEquals(Double.NEGATIVE_INFINITY, ScpiNumber.meaning(-9.9E37f));
    assertEquals(-0.25, ScpiNumber.meaning(-0.25f));
  }
}
