package mainsgap.scpi;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Replies to SYSTem:ERRor? by SCPI-1999 Vol. 2 chapter 21; the other spellings are common practice.
 */
class InstrumentErrorTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "0,\"No error\" | 0 | No error",
        "+0,\"No error\" | 0 | No error",
        "0 | 0 | ''",
        "-113,\"Undefined header;FOO:BAR\" | -113 | Undefined header;FOO:BAR",
        "-222, \"Data out of range\" | -222 | Data out of range",
        ":SYST:ERR -222,\"Data out of range\" | -222 | Data out of range",
        "-100,Command error | -100 | Command error",
        "17,\"\" | 17 | ''",
      })
  void repliesAreRead(String reply, int number, String text) {
    assertEquals(new InstrumentError(number, text), InstrumentError.parse(reply));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "No error", "\"-113\"", "1.5,\"x\"", "99999999999,\"x\""})
  void anythingElseIsRefused(String reply) {
    ScpiException e = assertThrows(ScpiException.class, () -> InstrumentError.parse(reply));
    assertEquals(
        "it says '" + reply + "' where an error's number and text should be", e.getMessage());
  }

  @ParameterizedTest
  @ValueSource(ints = {-100, -113, -222, -350, -440, 1, 901})
  void errorsAreFaults(int number) {
    assertTrue(new InstrumentError(number, "").isFault());
  }

  /** SCPI-1999 Vol. 2 chapter 21: power on, user request, request control, complete. */
  @ParameterizedTest
  @ValueSource(ints = {0, -500, -600, -700, -800})
  void eventsAreNot(int number) {
    assertFalse(new InstrumentError(number, "").isFault());
  }

  /** The meaning of each number is that of SCPI-1999 Vol. 2 chapter 21; the words are ours. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "-113 | does not know this command",
        "-114 | no channel or unit of that number",
        "-213 | already running",
        "-221 | does not go with the others",
        "-222 | outside what it can do",
        "-230 | no valid data",
        "-350 | errors were lost",
        "-410 | before its reply was read",
        "-199 | does not understand the command",
        "-299 | could not do it now",
        "-399 | a fault of its own",
        "-499 | out of step",
        "1234 | the instrument's own",
        "-999 | instrument's manual",
      })
  void everyNumberHasAdvice(int number, String advice) {
    assertTrue(ErrorAdvice.of(number).contains(advice), ErrorAdvice.of(number));
  }
}
