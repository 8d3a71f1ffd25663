package mainsgap.cli;

import static mainsgap.cli.SeriesExamples.CLAIM;
import static mainsgap.cli.SeriesExamples.MEASURED;
import static mainsgap.cli.SeriesExamples.NO_INTERRUPTION;
import static mainsgap.cli.SeriesExamples.NO_RETURN;
import static mainsgap.cli.SeriesExamples.REFUSED;
import static mainsgap.cli.SeriesExamples.trial;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import mainsgap.bench.RunningFigures;
import mainsgap.bench.SeriesEnd;
import mainsgap.bench.TrialReport;
import mainsgap.report.OutcomeWords;
import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.transfer.outcome.FurtherInterruptions;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.OtherChannels;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Verdict;
import org.junit.jupiter.api.Test;

class SeriesTextTest {

  @Test
  void everyKindOfTrialHasItsLineAndTheSummaryStandsBelow() {
    SeriesEnd end =
        SeriesExamples.end(
            SeriesEnd.Kind.COMPLETE,
            trial(1, MEASURED, Verdict.PASS),
            trial(2, NO_INTERRUPTION, Verdict.PASS),
            trial(3, NO_RETURN, Verdict.FAIL),
            trial(10, REFUSED, null));
    assertEquals(
        """
        trial           transfer time  ±U (95 %)   dead time  angle  verdict
            1                8.417 ms  ± 0.052 ms    7.95 ms   123°  PASS
            2     no gap over 0.25 ms  -                   -   270°  PASS
            3  no return in 321.06 ms  ± 0.12 ms   300.00 ms    45°  FAIL
           10                 refused  -                   -      -  -

        trial 1: the mains switch bounced: it opened for good 0.400 ms later
        trial 2: proof that mains was lost: the mains channel ends
        trial 3: the reason
        trial 10: no event in the record

        judged by a rule. The time is counted from the loss to the return, as the load sees it: near the
            'total transfer time' of IEC 62040-3, whose 'transfer time' starts later, at the initiation
            of the transfer

        unit         Shelf unit 3
        declared     20ms
        measured     5 trials, 2 of them before this run; 1 refused
        mean         8.50 ms
        median       8.40 ms
        s            0.13 ms
        largest      9.000 ms
        upper bound  12.75 ms (95 % of transfers lie below it, with 95 % confidence)
        verdict      INCONCLUSIVE: not yet shown
        session      series.mainsgap
        last seal    0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f
        """,
        SeriesText.of(end, CLAIM));
  }

  @Test
  void theLiveLineSaysNumberTimeUncertaintyAndVerdict() {
    assertEquals(
        "trial 3   8.417 ms ± 0.052 ms  PASS: declared 20ms",
        SeriesProgress.line(trial(3, MEASURED, Verdict.PASS), CLAIM));
    assertEquals(
        "trial 4   8.417 ms ± 0.052 ms", SeriesProgress.line(trial(4, MEASURED, null), null));
    assertEquals(
        "trial 5   8.417 ms ± 0.052 ms  INCONCLUSIVE: the reason",
        SeriesProgress.line(trial(5, MEASURED, Verdict.INCONCLUSIVE), CLAIM));
    assertEquals(
        "trial 6   8.417 ms ± 0.052 ms  FAIL: declared 20ms",
        SeriesProgress.line(trial(6, MEASURED, Verdict.FAIL), CLAIM));
    assertEquals(
        "trial 12  refused: no event in the record",
        SeriesProgress.line(trial(12, REFUSED, null), CLAIM));
  }

  @Test
  void aSeriesWithoutAnyGapClaimsNoMeanOfNothing() {
    String text =
        SeriesText.of(
            end(
                new RunningFigures(
                    1, 0.0, null, 0.0, 0.0, 0.0, null, Verdict.INCONCLUSIVE, null, List.of()),
                trial(1, NO_INTERRUPTION, Verdict.PASS)),
            CLAIM);
    assertTrue(text.contains("measured     1 trial\nverdict      INCONCLUSIVE\n"), text);
  }

  @Test
  void aTypicalValueIsComparedWithTheMedian() {
    String text =
        SeriesText.of(
            end(
                new RunningFigures(
                    1,
                    8.4,
                    null,
                    8.4,
                    8.4,
                    null,
                    null,
                    null,
                    "the median 8.417 ms is within the declared typical 20 ms, which is not judged as"
                        + " a maximum",
                    List.of()),
                trial(1, MEASURED, null)),
            new DeclaredClaim(
                "20ms", 20, false, DeclaredClaim.Kind.TYPICAL, "unknown", "unknown", "unknown"));
    assertTrue(text.contains("compared     the median 8.417 ms is within the declared"), text);
  }

  @Test
  void theLargestIsALowerBoundWhereItsRecordEndedBeforeTheReturn() {
    String text =
        SeriesText.of(
            end(
                new RunningFigures(
                    2, null, null, null, 321.06, null, null, Verdict.FAIL, null, List.of()),
                trial(1, MEASURED, Verdict.PASS),
                trial(2, NO_RETURN, Verdict.FAIL)),
            CLAIM);
    assertTrue(text.contains("largest      at least 321.060 ms\n"), text);
  }

  private static SeriesEnd end(RunningFigures figures, TrialReport... trials) {
    SeriesEnd any = SeriesExamples.end(SeriesEnd.Kind.COMPLETE, trials);
    return new SeriesEnd(
        any.kind(),
        any.sentence(),
        any.unit(),
        any.task(),
        any.trials(),
        figures,
        any.session(),
        any.lastSeal());
  }

  @Test
  void aLossJustBeforeTheFullCircleIsAtZeroDegrees() {
    Measured late = (Measured) MEASURED;
    Outcome outcome =
        new Measured(
            late.event(),
            late.lossSeconds(),
            late.lastOpeningSeconds(),
            late.firstReturnSeconds(),
            late.returnSeconds(),
            late.transferMillis(),
            late.budget(),
            FurtherInterruptions.NONE,
            late.deadMillis(),
            null,
            null,
            359.7,
            late.supplies(),
            null,
            OtherChannels.NONE);
    assertEquals("0°", OutcomeWords.of(outcome).angle());
  }
}
