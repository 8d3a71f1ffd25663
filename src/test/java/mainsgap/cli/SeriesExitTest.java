package mainsgap.cli;

import static mainsgap.cli.SeriesExamples.MEASURED;
import static mainsgap.cli.SeriesExamples.NO_INTERRUPTION;
import static mainsgap.cli.SeriesExamples.REFUSED;
import static mainsgap.cli.SeriesExamples.end;
import static mainsgap.cli.SeriesExamples.trial;
import static org.junit.jupiter.api.Assertions.assertEquals;

import mainsgap.bench.SeriesEnd.Kind;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Verdict;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Exit codes by the design's list. */
class SeriesExitTest {

  @ParameterizedTest
  @CsvSource({
    "COMPLETE, 0",
    "INCOMPLETE, 1",
    "WRONG_USE, 2",
    "NOTHING_MEASURED, 3",
    "INSTRUMENT_FAILED, 4",
    "SESSION_FAILED, 5",
    "STOPPED, 130"
  })
  void theWayInWhichTheSeriesEndedComesFirst(Kind kind, int code) {
    assertEquals(code, SeriesExit.of(end(kind, trial(1, MEASURED, Verdict.PASS)), true).number());
  }

  @Test
  void everyTrialMustPassADeclaredTime() {
    assertEquals(ExitCode.DONE, complete(true, MEASURED, Verdict.PASS));
    assertEquals(ExitCode.DONE, complete(true, NO_INTERRUPTION, Verdict.PASS));
    assertEquals(ExitCode.NOT_ALL_PASSED, complete(true, MEASURED, Verdict.FAIL));
    assertEquals(ExitCode.NOT_ALL_PASSED, complete(true, MEASURED, Verdict.INCONCLUSIVE));
    assertEquals(ExitCode.NOT_ALL_PASSED, complete(true, MEASURED, null));
  }

  @Test
  void withNothingDeclaredItIsEnoughToBeMeasured() {
    assertEquals(ExitCode.DONE, complete(false, MEASURED, null));
    assertEquals(ExitCode.NOT_ALL_PASSED, complete(false, REFUSED, null));
  }

  private static ExitCode complete(boolean declared, Outcome outcome, @Nullable Verdict verdict) {
    return SeriesExit.of(
        end(Kind.COMPLETE, trial(1, MEASURED, Verdict.PASS), trial(2, outcome, verdict)), declared);
  }
}
