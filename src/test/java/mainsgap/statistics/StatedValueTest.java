package mainsgap.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StatedValueTest {

  /**
   * 10.05762 with 0.027 is the example of JCGM 100, 7.2.6 (from memory); 9.236 and the rest follow
   * from its rule worked out by hand.
   */
  @ParameterizedTest
  @CsvSource({
    "10.05762, 0.027, 10.058 ± 0.027",
    "9.23612, 0.01234, 9.236 ± 0.012",
    "9.2, 0.5, 9.20 ± 0.50",
    "9.2, 1, 9.2 ± 1.0",
    "12.3456, 0.0996, 12.35 ± 0.10",
    "12.3456, 0.996, 12.3 ± 1.0",
    "1234.5, 123, 1230 ± 120",
    "0, 0.0004, 0.00000 ± 0.00040",
    "-18.257, 0.25, -18.26 ± 0.25"
  })
  void isRoundedToTwoDigitsOfItsUncertainty(double value, double uncertainty, String stated) {
    assertEquals(stated, StatedValue.of(value, uncertainty).toString());
  }

  @Test
  void noUncertaintyIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> StatedValue.of(9.2, 0));
    assertThrows(IllegalArgumentException.class, () -> StatedValue.of(9.2, Double.NaN));
    assertThrows(IllegalArgumentException.class, () -> StatedValue.of(Double.NaN, 0.1));
  }
}
