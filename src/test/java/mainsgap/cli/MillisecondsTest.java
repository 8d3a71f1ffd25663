package mainsgap.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class MillisecondsTest {

  @ParameterizedTest
  @CsvSource({
    "20ms, 20",
    "0.02s, 20",
    "20 ms, 20",
    "500us, 0.5",
    "500µs, 0.5",
    "8.5MS, 8.5",
    "0ms, 0",
    ".02s, 20",
    "10s, 10000"
  })
  void aNumberWithItsUnitIsRead(String words, double millis) {
    assertEquals(millis, Milliseconds.parse(words).millis(), 1e-9);
    assertEquals(words, Milliseconds.parse(words).asTyped());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"20", "0.02", "", "ms", "-5ms", "20h", "1e3ms", "20,5ms", "NaNms", "twenty"})
  void anythingElseIsAnsweredWithTheForm(String words) {
    Exception e = assertThrows(IllegalArgumentException.class, () -> Milliseconds.parse(words));
    assertTrue(String.valueOf(e.getMessage()).contains("20ms"), e.getMessage());
  }
}
