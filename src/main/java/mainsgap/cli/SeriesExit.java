package mainsgap.cli;

import mainsgap.bench.SeriesEnd;
import mainsgap.bench.TrialReport;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Verdict;

/** The exit code of a series, by its end and its trials. */
final class SeriesExit {
  private SeriesExit() {}

  /** The exit code; {@code declared} says whether there is a time to pass. */
  static ExitCode of(SeriesEnd end, boolean declared) {
    return switch (end.kind()) {
      case COMPLETE ->
          end.trials().stream().allMatch(trial -> isGood(trial, declared))
              ? ExitCode.DONE
              : ExitCode.NOT_ALL_PASSED;
      case INCOMPLETE -> ExitCode.NOT_ALL_PASSED;
      case NOTHING_MEASURED -> ExitCode.NOTHING_MEASURED;
      case WRONG_USE -> ExitCode.WRONG_USE;
      case INSTRUMENT_FAILED -> ExitCode.INSTRUMENT_FAILED;
      case SESSION_FAILED -> ExitCode.SESSION_FAILED;
      case STOPPED -> ExitCode.STOPPED;
    };
  }

  private static boolean isGood(TrialReport trial, boolean declared) {
    if (trial.outcome().kind() == Outcome.Kind.REFUSED) {
      return false;
    }
    return !declared || (trial.judgement() != null && trial.judgement().verdict() == Verdict.PASS);
  }
}
