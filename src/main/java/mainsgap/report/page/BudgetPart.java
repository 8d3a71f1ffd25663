package mainsgap.report.page;

import java.util.List;
import mainsgap.report.BudgetWords;
import mainsgap.report.OutcomeWords;
import mainsgap.session.LoggedTrial;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.UncertaintyBudget;
import org.jspecify.annotations.Nullable;

/**
 * The uncertainty of one trial, line by line.
 *
 * @param trial its number
 * @param time the transfer time with its uncertainty
 * @param setAside whether the trial no longer counts
 * @param words the budget; null where there is none
 * @param why there is none; null where there is one
 */
record BudgetPart(
    int trial, String time, boolean setAside, @Nullable BudgetWords words, @Nullable String why) {

  /** A part for each trial that measured something. */
  static List<BudgetPart> of(List<LoggedTrial> trials) {
    return trials.stream().filter(trial -> !trial.isRefused()).map(BudgetPart::of).toList();
  }

  private static BudgetPart of(LoggedTrial trial) {
    Outcome outcome = trial.outcome();
    UncertaintyBudget budget = trial.budget();
    return new BudgetPart(
        trial.number(),
        OutcomeWords.of(outcome).phrase(),
        trial.setAsideReason() != null,
        budget == null ? null : BudgetWords.of(budget),
        budget == null ? why(outcome) : null);
  }

  private static String why(Outcome outcome) {
    return outcome.kind() == Outcome.Kind.NO_INTERRUPTION
        ? "The shortest gap that the capture would have shown is no sum of causes: it has no budget."
        : "The session does not hold the lines of this uncertainty: " + Fact.NOT_RECORDED + ".";
  }
}
