package mainsgap.cli;

import java.util.Objects;
import mainsgap.bench.RunningFigures;
import mainsgap.bench.SeriesEnd;
import mainsgap.bench.TrialReport;
import mainsgap.report.Readings;
import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.NoReturn;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.OutcomeNotes;
import org.jspecify.annotations.Nullable;

/** A finished series for a person: the trials, what they say together, and where they are kept. */
final class SeriesText {
  private SeriesText() {}

  /** The text. */
  static String of(SeriesEnd end, @Nullable DeclaredClaim claim) {
    StringBuilder text = new StringBuilder();
    if (!end.trials().isEmpty()) {
      TrialTable trials = new TrialTable("trial", TextTable.Side.RIGHT);
      end.trials()
          .forEach(
              trial ->
                  trials.add(
                      Integer.toString(trial.number()),
                      trial.outcome(),
                      trial.judgement(),
                      OutcomeNotes.of(trial.outcome())));
      ReturnTable returns = new ReturnTable("trial", TextTable.Side.RIGHT);
      end.trials().forEach(trial -> returns.add(Integer.toString(trial.number()), trial.outcome()));
      text.append(trials).append(returns).append('\n');
    }
    return text.append(summary(end, claim)).toString();
  }

  /** The uncertainty of each trial, line by line. */
  static String budgets(SeriesEnd end) {
    StringBuilder text = new StringBuilder();
    end.trials()
        .forEach(trial -> text.append(BudgetText.of("trial " + trial.number(), trial.outcome())));
    return text.toString();
  }

  private static String summary(SeriesEnd end, @Nullable DeclaredClaim claim) {
    RunningFigures figures = end.figures();
    double scatter =
        Objects.requireNonNullElse(figures.standardDeviationMillis(), smallestUncertainty(end));
    String bound =
        figures.upperToleranceBoundMillis() == null
            ? "- (needs 3 trials, each with a return)"
            : orDash(figures.upperToleranceBoundMillis(), scatter)
                + " (95 % of transfers lie below it, with 95 % confidence)";
    String statistics =
        TextWrap.labelled("mean", orDash(figures.meanMillis(), scatter))
            + TextWrap.labelled("median", orDash(figures.medianMillis(), scatter))
            + TextWrap.labelled("s", orDash(figures.standardDeviationMillis(), scatter))
            + TextWrap.labelled("largest", largest(end))
            + TextWrap.labelled("upper bound", bound);
    return TextWrap.labelled("unit", end.unit())
        + TextWrap.labelled("declared", claim == null ? "nothing: not judged" : claim.asPrinted())
        + TextWrap.labelled("measured", measured(end))
        + (hasGap(figures) ? statistics : "")
        + (claim != null && !claim.isLimit()
            ? TextWrap.labelled("compared", String.valueOf(figures.reason()))
            : "")
        + (figures.verdict() == null ? "" : TextWrap.labelled("verdict", verdict(figures)))
        + TextWrap.labelled("session", String.valueOf(end.session()))
        + TextWrap.labelled("last seal", end.lastSeal() == null ? "-" : end.lastSeal());
  }

  /** The figures are those of the whole session, the trials above those of this run. */
  private static String measured(SeriesEnd end) {
    long refused = end.trials().stream().filter(SeriesText::isRefused).count();
    int setAside = end.figures().setAside().size();
    long counted = end.trials().stream().filter(TrialReport::counts).count();
    long earlier = end.figures().measured() - counted;
    return Readings.counted(end.figures().measured(), "trial")
        + (earlier > 0 ? ", " + earlier + " of them before this run" : "")
        + (refused > 0 ? "; " + refused + " refused" : "")
        + (setAside > 0 ? "; " + setAside + " set aside" : "");
  }

  /** Without a gap in any trial, a mean of 0 ms would claim more than was seen. */
  private static boolean hasGap(RunningFigures figures) {
    return figures.maxMillis() != null && figures.maxMillis() > 0;
  }

  /** Where the record ended before the return, the largest is a lower bound. */
  private static String largest(SeriesEnd end) {
    Double largest = end.figures().maxMillis();
    boolean censored =
        end.trials().stream()
            .map(TrialReport::outcome)
            .anyMatch(
                outcome ->
                    outcome instanceof NoReturn noReturn
                        && Double.valueOf(noReturn.atLeastMillis()).equals(largest));
    return (censored ? "at least " : "") + orDash(largest, smallestUncertainty(end));
  }

  private static boolean isRefused(TrialReport trial) {
    return trial.outcome().kind() == Outcome.Kind.REFUSED;
  }

  private static String verdict(RunningFigures figures) {
    return figures.verdict() + (figures.reason() == null ? "" : ": " + figures.reason());
  }

  /** The largest is stated to the last digit of the best trial, the others by their scatter. */
  private static double smallestUncertainty(SeriesEnd end) {
    return end.trials().stream()
        .map(TrialReport::outcome)
        .filter(Measured.class::isInstance)
        .mapToDouble(outcome -> ((Measured) outcome).uncertaintyMillis())
        .min()
        .orElse(0);
  }

  private static String orDash(@Nullable Double millis, double uncertaintyMillis) {
    return millis == null ? "-" : Readings.millis(millis, uncertaintyMillis);
  }
}
