package mainsgap.scope;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.stream.Stream;
import mainsgap.scope.TenFields.Scaling;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PreambleTest {
  private static final double EXACT = 1e-12;

  /** Computed by hand from the two published readings of the ninth field. */
  @Test
  void originInVoltsIsAddedAfterScaling() {
    Preamble preamble = of("0,0,1000,1,1E-5,-0.002,0,0.02,0.5,128");
    assertEquals(1.94, preamble.scale(Scaling.ORIGIN_IN_VOLTS).voltsOf(200), EXACT);
  }

  @Test
  void originInCodesIsTakenOffBeforeScaling() {
    Preamble preamble = of("0,0,1000,1,1E-5,-0.002,0,0.02,-25,127");
    assertEquals(1.96, preamble.scale(Scaling.ORIGIN_IN_CODES).voltsOf(200), EXACT);
  }

  @Test
  void originOfAPartOfACodeIsNotInCodes() {
    Preamble preamble = of("0,0,1000,1,1E-5,-0.002,0,0.02,0.5,128");
    ScopeException refused =
        assertThrows(ScopeException.class, () -> preamble.scale(Scaling.ORIGIN_IN_CODES));
    assertEquals(
        "the preamble has the y origin 0.5, which is no number of codes: set 'waveform.scaling' to"
            + " origin-in-volts",
        refused.getMessage());
  }

  /** t[i] = (i - xreference) * xincrement + xorigin. */
  @Test
  void timeOfTheFirstSampleHeedsTheReference() {
    assertEquals(-0.502, of("0,0,1000,1,0.001,-0.002,500,0.02,0,128").firstSampleSeconds(), EXACT);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "0,0,1000,1,1E-5,0,0,0.02,0 | has 9 fields, expected 10",
        "0,0,1000,1,1E-5,0,0,0.02,0,128,7 | has 11 fields, expected 10",
        "0,0,0,1,1E-5,0,0,0.02,0,128 | claims 0.0 points",
        "0,0,1.5,1,1E-5,0,0,0.02,0,128 | claims 1.5 points",
        "0,0,3E9,1,1E-5,0,0,0.02,0,128 | claims 3.0E9 points",
        "0,0,1000,1,0,0,0,0.02,0,128 | x increment 0.0 s",
        "0,0,1000,1,-1E-5,0,0,0.02,0,128 | x increment -1.0E-5 s",
        "0,0,1000,1,1E-5,0,0,0,0,128 | y increment 0 V",
        "0,0,1000,1,1E-5,0,0,NaN,0,128 | a field that is not a number",
        "0,0,1000,1,Infinity,0,0,0.02,0,128 | a field that is not a number",
      })
  void whatCannotPlaceASampleIsRefused(String fields, String sentence) {
    String message =
        String.valueOf(assertThrows(ScopeException.class, () -> of(fields)).getMessage());
    assertTrue(message.contains(sentence), message);
  }

  private static Preamble of(String fields) {
    return Preamble.of(Stream.of(fields.split(",")).mapToDouble(Double::parseDouble).toArray());
  }
}
