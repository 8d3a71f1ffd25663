package mainsgap.cli;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import mainsgap.bench.RunningFigures;
import mainsgap.bench.SeriesEnd;
import mainsgap.bench.TrialReport;
import mainsgap.signal.Event;
import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.transfer.outcome.FurtherInterruptions;
import mainsgap.transfer.outcome.Judgement;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.NoInterruption;
import mainsgap.transfer.outcome.NoReturn;
import mainsgap.transfer.outcome.OtherChannels;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Refused;
import mainsgap.transfer.outcome.Supplies;
import mainsgap.transfer.outcome.UncertaintyBudget;
import mainsgap.transfer.outcome.Verdict;
import org.jspecify.annotations.Nullable;

/** Invented trials with every kind of outcome. */
final class SeriesExamples {
  static final DeclaredClaim CLAIM = DeclaredClaim.ofMillis(20, "20ms");
  static final Supplies SUPPLIES = new Supplies(50.01, -12.5, -1.25, 33.0);
  static final Outcome MEASURED =
      new Measured(
          Event.LOSS,
          0.1,
          0.1004,
          0.1081,
          0.108416,
          8.41678,
          new UncertaintyBudget(List.of(new UncertaintyBudget.Component("edges", 0.026)), 2),
          FurtherInterruptions.NONE,
          7.95,
          8.6,
          null,
          123.4,
          SUPPLIES,
          null,
          OtherChannels.NONE);
  static final Outcome NO_RETURN =
      new NoReturn(Event.LOSS, 0.1, 0.1, 321.06, 0.12, 45, 300, SUPPLIES, false, null);
  static final Outcome NO_INTERRUPTION =
      new NoInterruption(Event.LOSS, 0.25, "the mains channel ends", 0.1, 270, SUPPLIES);
  static final Outcome REFUSED = new Refused("no event in the record");

  private SeriesExamples() {}

  static TrialReport trial(int number, Outcome outcome, @Nullable Verdict verdict) {
    return new TrialReport(
        number,
        Instant.parse("2026-01-01T00:00:00Z"),
        outcome,
        verdict == null ? null : new Judgement(verdict, "a rule", "its word", "the reason"));
  }

  static SeriesEnd end(SeriesEnd.Kind kind, TrialReport... trials) {
    return new SeriesEnd(
        kind,
        "the sentence",
        "Shelf unit 3",
        new MeasuringTask(Event.LOSS, 230, 50),
        List.of(trials),
        new RunningFigures(
            5, 8.5, 0.125, 8.4, 9.0, 12.75, 19.9, Verdict.INCONCLUSIVE, "not yet shown", List.of()),
        Path.of("series.mainsgap"),
        "0f".repeat(32));
  }
}
