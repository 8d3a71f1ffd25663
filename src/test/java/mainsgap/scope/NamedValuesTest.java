package mainsgap.scope;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NamedValuesTest {
  /** Names and the order of values as program manuals print them; the numbers are invented. */
  private static final NamedValues VALUES =
      NamedValues.of(
          ":WFMO:BYT_NR 2;BN_FMT RI;WFID \"Ch1; DC, 'x' 1.0V/div; XINCR 7\";NR_PT 1000;"
              + ":WFMO:XINCR 4.0E-9;YUNIT \"V\";");

  @ParameterizedTest
  @CsvSource({"BYT_NR, 2", "bn_fmt, RI", "XINCR, 4.0E-9", "YUNIT, V", "NR_PT, 1000"})
  void aValueIsFoundByItsName(String name, String value) {
    assertEquals(value, VALUES.text(name));
  }

  @Test
  void whatQuotesHoldIsNotTakenApart() {
    assertEquals("Ch1; DC, 'x' 1.0V/div; XINCR 7", VALUES.text("WFID"));
  }

  @Test
  void aMissingNameIsToldWithThoseThatAreThere() {
    ScopeException refused = assertThrows(ScopeException.class, () -> VALUES.text("YMULT"));
    assertEquals(
        "the preamble has no 'YMULT', it names BN_FMT, BYT_NR, NR_PT, WFID, XINCR, YUNIT: check"
            + " 'waveform.values' in the profile",
        refused.getMessage());
  }

  @Test
  void aWordIsNoNumber() {
    ScopeException refused = assertThrows(ScopeException.class, () -> VALUES.number("BN_FMT"));
    assertEquals(
        "the preamble has 'RI' for 'BN_FMT' where a number should be", refused.getMessage());
  }
}
