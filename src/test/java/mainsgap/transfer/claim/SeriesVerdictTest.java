package mainsgap.transfer.claim;

import static mainsgap.transfer.claim.TrialVerdictTest.atMost;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import mainsgap.transfer.outcome.FurtherInterruptions;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.OtherChannels;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Outcomes;
import mainsgap.transfer.outcome.Refused;
import mainsgap.transfer.outcome.UncertaintyBudget;
import mainsgap.transfer.outcome.Verdict;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SeriesVerdictTest {
  /** Ten transfer times whose mean, s and 95/95 bound were computed with SciPy. */
  private static final double[] CAMPAIGN = {8.6, 9.4, 9.1, 8.9, 9.8, 9.2, 8.7, 9.5, 9.0, 9.3};

  /** Mean 9.15, s 0.36893, maximum 9.8, bound 10.224: every reading passes 10 ms, the bound not. */
  @Test
  void allTrialsPassAndTheClaimIsNotYetShown() {
    SeriesSummary summary = SeriesVerdict.judge(gaps(0.05, CAMPAIGN), atMost(10));
    assertEquals(10, summary.n());
    assertEquals(9.15, value(summary.meanMillis()), 1e-12);
    assertEquals(0.36893, value(summary.standardDeviationMillis()), 5e-6);
    assertEquals(9.8, value(summary.maxMillis()));
    assertEquals(9.15, value(summary.medianMillis()), 1e-12);
    assertEquals(10.224, value(summary.upperToleranceBoundMillis()), 5e-4);
    assertEquals(Verdict.INCONCLUSIVE, summary.verdict());
    assertTrue(summary.reason().startsWith("all 10 passed, the claim is not yet shown: "));
  }

  /** The bound alone is 10.224 ms; U = 0.03 ms in each trial. */
  @ParameterizedTest
  @CsvSource({
    "10.23, true, INCONCLUSIVE", // 10.224 + 0.030
    "10.26, true, PASS",
    "10.23, false, PASS" // drawn anew in each trial: the scatter holds it already
  })
  void commonPartOfTheUncertaintyComesOnTop(double ratedMillis, boolean common, Verdict verdict) {
    List<Outcome> outcomes = new ArrayList<>();
    for (double millis : CAMPAIGN) {
      outcomes.add(new Outcomes.Gap(millis, 0.03).of(Outcomes.budget(0.03, common)).outcome());
    }
    SeriesSummary summary = SeriesVerdict.judge(outcomes, atMost(ratedMillis));
    assertEquals(common ? 0.03 : 0, summary.commonUncertaintyMillis(), 1e-12);
    assertEquals(verdict, summary.verdict());
  }

  @Test
  void onlyTheSharedLinesOfABudgetAreCommon() {
    UncertaintyBudget budget =
        new UncertaintyBudget(
            List.of(
                new UncertaintyBudget.Component("time base", 0.03),
                new UncertaintyBudget.Component("method", 0.04, true),
                new UncertaintyBudget.Component("noise", 0.12, false)),
            2);
    assertEquals(0.26, budget.expandedMillis(), 1e-12);
    assertEquals(0.10, budget.commonExpandedMillis(), 1e-12);
  }

  @Test
  void oneFailedTrialFailsTheSeries() {
    SeriesSummary summary = SeriesVerdict.judge(gaps(0.05, 9, 9, 9, 21), atMost(20));
    assertEquals(Verdict.FAIL, summary.verdict());
    assertEquals(
        "1 of 4 failed: longer than the declared maximum of 20 ms is shown", summary.reason());
  }

  @Test
  void underThreeTrialsThereIsNoBound() {
    SeriesSummary two = SeriesVerdict.judge(gaps(0.05, 9, 9.1), atMost(20));
    assertNull(two.upperToleranceBoundMillis());
    assertEquals(Verdict.INCONCLUSIVE, two.verdict());
    assertEquals("2 valid trials: an upper bound needs at least 3", two.reason());
    SeriesSummary one = SeriesVerdict.judge(gaps(0.05, 9), atMost(20));
    assertNull(one.standardDeviationMillis());
    assertEquals(9, value(one.meanMillis()));
    assertEquals(Verdict.FAIL, SeriesVerdict.judge(gaps(0.05, 25), atMost(20)).verdict());
  }

  @Test
  void seriesWithoutTrialsHasNoFigures() {
    SeriesSummary summary = SeriesVerdict.judge(List.of(new Refused("clipped")), atMost(20));
    assertEquals(0, summary.n());
    assertNull(summary.meanMillis());
    assertNull(summary.maxMillis());
    assertNull(summary.medianMillis());
    assertEquals(Verdict.INCONCLUSIVE, summary.verdict());
  }

  /** Ten trials of 5 ms, each with a leg that was not measured: none of them passed. */
  @Test
  void aLegThatWasNotMeasuredForbidsThePassOfASeries() {
    List<Outcome> outcomes = new ArrayList<>();
    for (int k = 0; k < 10; k++) {
      outcomes.add(withLeg(Outcomes.gap(5, 0.1), new Refused("clipped")));
    }
    SeriesSummary summary = SeriesVerdict.judge(outcomes, atMost(20));
    assertEquals(Verdict.INCONCLUSIVE, summary.verdict());
    assertTrue(summary.reason().startsWith("10 of 10 may hide"), summary.reason());
  }

  /** The campaign on the second leg: its bound, 10.224 ms, is above 10 ms. */
  @Test
  void theBoundIsThatOfTheLongestInterruptionOnEitherLeg() {
    List<Outcome> outcomes = new ArrayList<>();
    for (double millis : CAMPAIGN) {
      outcomes.add(withLeg(Outcomes.gap(5, 0.01), Outcomes.gap(millis, 0.01)));
    }
    SeriesSummary summary = SeriesVerdict.judge(outcomes, atMost(10));
    assertEquals(5, value(summary.upperToleranceBoundMillis()), 1e-12);
    assertEquals(Verdict.INCONCLUSIVE, summary.verdict());
    assertTrue(summary.reason().contains("10.224 ms"), summary.reason());
    assertEquals(Verdict.PASS, SeriesVerdict.judge(outcomes, atMost(10.3)).verdict());
  }

  @Test
  void aRecordThatEndsInAFurtherInterruptionForbidsThePassOfASeries() {
    List<Outcome> outcomes = new ArrayList<>(gaps(0.05, 9, 9.1, 9.2));
    outcomes.add(
        new Outcomes.Gap(9, 0.05).with(new FurtherInterruptions(1, 15.0, 1, true)).outcome());
    assertEquals(Verdict.INCONCLUSIVE, SeriesVerdict.judge(outcomes, atMost(20)).verdict());
  }

  private static Measured withLeg(Measured output, Outcome leg) {
    OtherChannels others = new OtherChannels(null, OtherChannels.SecondLeg.of(leg), null, null);
    return output.with(others, output.lastOpeningSeconds());
  }

  @Test
  void refusedTrialsDoNotCount() {
    List<Outcome> outcomes = gaps(0.05, 9, 9.1, 9.2);
    outcomes.add(1, new Refused("clipped"));
    SeriesSummary summary = SeriesVerdict.judge(outcomes, atMost(20));
    assertEquals(3, summary.n());
    assertEquals(9.1, value(summary.meanMillis()), 1e-12);
    assertEquals(Verdict.PASS, summary.verdict());
  }

  /** k1 of three readings is 7.6559 (SciPy): 9.1 + 7.6559 x 0.1 = 9.86559. */
  @Test
  void boundOfThreeReadings() {
    SeriesSummary summary = SeriesVerdict.judge(gaps(0.05, 9, 9.1, 9.2), atMost(20));
    assertEquals(9.86559, value(summary.upperToleranceBoundMillis()), 1e-5);
  }

  @Test
  void trialWithoutReturnIsTheLargestAndForbidsABound() {
    List<Outcome> outcomes = gaps(0.05, 9, 9.2, 9.1);
    outcomes.add(Outcomes.noReturn(15, 0.1, 0));
    SeriesSummary summary = SeriesVerdict.judge(outcomes, atMost(20));
    assertEquals(4, summary.n());
    assertEquals(1, summary.noReturns());
    assertEquals(15, value(summary.maxMillis()));
    assertEquals(9.15, value(summary.medianMillis()), 1e-12);
    assertNull(summary.upperToleranceBoundMillis());
    assertEquals(Verdict.INCONCLUSIVE, summary.verdict());
    assertTrue(summary.reason().contains("so there is no normal bound"));
    outcomes.add(Outcomes.noReturn(250, 0.1, 0));
    assertEquals(Verdict.FAIL, SeriesVerdict.judge(outcomes, atMost(20)).verdict());
  }

  @Test
  void medianThatFallsOnATrialWithoutReturnIsUnknown() {
    List<Outcome> outcomes = gaps(0.05, 9);
    outcomes.add(Outcomes.noReturn(15, 0.1, 0));
    assertNull(SeriesVerdict.judge(outcomes, null).medianMillis());
  }

  @Test
  void trialsWithoutInterruptionCountAsZero() {
    List<Outcome> outcomes = gaps(0.05);
    for (int i = 0; i < 3; i++) {
      outcomes.add(Outcomes.noInterruption(0.2));
    }
    SeriesSummary summary = SeriesVerdict.judge(outcomes, atMost(0));
    assertEquals(0, value(summary.maxMillis()));
    assertEquals(Verdict.PASS, summary.verdict());
    assertEquals(
        "no interruption in any of 3 trials, which is within the declared maximum of 0 ms",
        summary.reason());
    outcomes.addAll(gaps(0.05, 0.4));
    SeriesSummary mixed = SeriesVerdict.judge(outcomes, atMost(1));
    assertEquals(0.1, value(mixed.meanMillis()), 1e-12);
  }

  @Test
  void furtherInterruptionsForbidAPass() {
    List<Outcome> outcomes = gaps(0.05, 9, 9.1);
    outcomes.add(new Outcomes.Gap(9, 0.05).withFurtherInterruptions(1).outcome());
    assertEquals(Verdict.INCONCLUSIVE, SeriesVerdict.judge(outcomes, atMost(20)).verdict());
  }

  @Test
  void typicalClaimIsComparedWithTheMedianAndNotJudged() {
    SeriesSummary within = SeriesVerdict.judge(gaps(0.05, 9, 9.1, 30), typical(10));
    assertNull(within.verdict());
    assertEquals(
        "the median 9.100 ms is within the declared typical 10 ms, which is not judged as a"
            + " maximum",
        within.reason());
    SeriesSummary above = SeriesVerdict.judge(gaps(0.05, 9, 11, 12), typical(10));
    assertNull(above.verdict());
    assertTrue(above.reason().startsWith("the median 11.000 ms is above "));
  }

  @Test
  void withoutAClaimThereAreFiguresAndNoVerdict() {
    SeriesSummary summary = SeriesVerdict.judge(gaps(0.05, 9, 9.1, 9.2), null);
    assertNull(summary.verdict());
    assertNotNull(summary.upperToleranceBoundMillis());
  }

  private static List<Outcome> gaps(double uncertaintyMillis, double... millis) {
    List<Outcome> outcomes = new ArrayList<>();
    Arrays.stream(millis).forEach(gap -> outcomes.add(Outcomes.gap(gap, uncertaintyMillis)));
    return outcomes;
  }

  private static double value(@Nullable Double number) {
    assertNotNull(number);
    return number;
  }

  static DeclaredClaim typical(double millis) {
    return new DeclaredClaim(
        "typ.", millis, false, DeclaredClaim.Kind.TYPICAL, "unknown", "unknown", "unknown");
  }
}
