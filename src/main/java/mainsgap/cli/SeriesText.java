package mainsgap.cli;

import mainsgap.bench.RunningFigures;
import mainsgap.bench.SeriesEnd;
import mainsgap.bench.TrialReport;
import mainsgap.cli.TextTable.Side;
import mainsgap.transfer.DeclaredClaim;
import mainsgap.transfer.Measured;
import org.jspecify.annotations.Nullable;

/** A finished series for a person: the trials, what they say together, and where they are kept. */
final class SeriesText {
  private SeriesText() {}

  /** The text. */
  static String of(SeriesEnd end, @Nullable DeclaredClaim claim) {
    StringBuilder text = new StringBuilder();
    if (!end.trials().isEmpty()) {
      TrialTable trials = new TrialTable("trial");
      end.trials()
          .forEach(
              trial ->
                  trials.add(Integer.toString(trial.number()), trial.outcome(), trial.judgement()));
      text.append(trials).append('\n');
    }
    text.append(summary(end, claim)).append('\n');
    return text.toString();
  }

  private static TextTable summary(SeriesEnd end, @Nullable DeclaredClaim claim) {
    RunningFigures figures = end.figures();
    double uncertainty = smallestUncertainty(end);
    TextTable table = new TextTable(Side.LEFT, Side.LEFT);
    table.add("unit", end.unit());
    table.add("declared", claim == null ? "nothing: not judged" : claim.asPrinted());
    table.add("measured", figures.measured() + " of " + end.trials().size() + " trials");
    table.add("mean", orDash(figures.meanMillis(), uncertainty));
    table.add("s", orDash(figures.standardDeviationMillis(), uncertainty));
    table.add("largest", orDash(figures.maxMillis(), uncertainty));
    table.add(
        "upper bound",
        figures.upperToleranceBoundMillis() == null
            ? "- (needs 3 trials, each with a return)"
            : orDash(figures.upperToleranceBoundMillis(), uncertainty)
                + " (95 % of transfers lie below it, with 95 % confidence)");
    if (figures.verdict() != null) {
      String reason = figures.reason() == null ? "" : ": " + figures.reason();
      table.add("verdict", figures.verdict() + reason);
    }
    table.add("session", String.valueOf(end.session()));
    table.add("last seal", end.lastSeal() == null ? "-" : end.lastSeal());
    return table;
  }

  /** The figures of a series are stated to the last digit of its best trial. */
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
