package mainsgap.report.page;

import java.util.List;
import java.util.Locale;
import mainsgap.report.OutcomeWords;
import mainsgap.report.ReturnWords;
import mainsgap.report.TrialWords;
import mainsgap.session.LoggedTrial;
import mainsgap.transfer.outcome.Outcome;
import org.jspecify.annotations.Nullable;

/**
 * A trial as a row of its tables.
 *
 * @param number in its session
 * @param at when its capture was read, UTC
 * @param words its time, uncertainty, dead time and angle
 * @param result the verdict, or what stands in its place
 * @param mark the result as the name of its look
 * @param remarks what has to be told beside the time
 * @param back how clean its return is; null where there was none
 */
record TrialPart(
    int number,
    String at,
    OutcomeWords words,
    String result,
    String mark,
    List<String> remarks,
    @Nullable ReturnWords back) {

  static TrialPart of(LoggedTrial trial) {
    Outcome outcome = trial.outcome();
    String result = TrialWords.of(trial).result();
    return new TrialPart(
        trial.number(),
        PageTime.inColumn(trial.at()),
        OutcomeWords.of(outcome),
        result,
        result.toLowerCase(Locale.ROOT).replace(' ', '-'),
        TrialWords.remarks(trial),
        ReturnWords.of(outcome).orElse(null));
  }

  /** Whether the trial came back and its cleanness was taken. */
  boolean hasReturn() {
    return back != null;
  }
}
