package mainsgap.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NumberWordTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "--nominal=230,0 | '230,0' is no number: write it with a point",
        "--trials=five | 'five' is no whole number",
        "--session= | --session names no file"
      })
  void whatIsNoNumberOrNoFileIsWrongUseInPlainWords(String option, String sentence) {
    CommandRun run = CommandRun.of("run", "--simulated", option);
    assertEquals(2, run.exit(), run.err());
    assertTrue(run.err().contains(sentence), run.err());
  }

  @Test
  void numbersAreReadWithAPoint() {
    assertEquals(229.5, NumberWord.decimal("229.5"));
    assertEquals(20, NumberWord.whole("20"));
  }
}
