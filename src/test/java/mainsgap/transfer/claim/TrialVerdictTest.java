package mainsgap.transfer.claim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import mainsgap.signal.Event;
import mainsgap.transfer.outcome.FurtherInterruptions;
import mainsgap.transfer.outcome.Judgement;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.NoReturn;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.OutcomeNotes;
import mainsgap.transfer.outcome.Outcomes;
import mainsgap.transfer.outcome.Refused;
import mainsgap.transfer.outcome.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TrialVerdictTest {

  /**
   * Limit 10 ms, U = 0.4 ms: guarded acceptance and rejection of JCGM 106 worked out by hand; the
   * two conditional zones of ILAC-G8:09/2019, 4.2.3, are both INCONCLUSIVE here.
   */
  @ParameterizedTest
  @CsvSource({
    "9.5, PASS, accepted",
    "9.6, PASS, accepted",
    "9.8, INCONCLUSIVE, neither accepted nor rejected",
    "10.0, INCONCLUSIVE, neither accepted nor rejected",
    "10.1, INCONCLUSIVE, neither accepted nor rejected",
    "10.4, INCONCLUSIVE, neither accepted nor rejected",
    "10.5, FAIL, rejected"
  })
  void guardBandIsAsWideAsTheUncertainty(double millis, Verdict verdict, String ruleOutcome) {
    Judgement judgement = judge(Outcomes.gap(millis, 0.4), atMost(10));
    assertEquals(verdict, judgement.verdict());
    assertEquals(ruleOutcome, judgement.ruleOutcome());
    assertEquals(DecisionRule.GUARDED.title(), judgement.decisionRule());
  }

  /** 9.5 and 0.5 are exact in binary: their sum is the limit itself. */
  @Test
  void onTheLimitAStrictClaimIsNotShown() {
    Measured gap = Outcomes.gap(9.5, 0.5);
    assertEquals(Verdict.PASS, judge(gap, atMost(10)).verdict());
    assertEquals(Verdict.INCONCLUSIVE, judge(gap, below(10)).verdict());
  }

  @ParameterizedTest
  @CsvSource({
    "19.0, 1, PASS", // both openings pass
    "20.0, 1, INCONCLUSIVE", // the first one cannot be told
    "20.5, 1, INCONCLUSIVE", // the first fails, the last passes
    "21.5, 1, FAIL", // both fail
    "21.05, 1, INCONCLUSIVE" // the first fails, the last cannot be told
  })
  void bouncedMainsSwitchIsJudgedFromBothOpenings(
      double millis, double bounceMillis, Verdict verdict) {
    Measured gap = new Outcomes.Gap(millis, 0.1).bouncing(bounceMillis).outcome();
    assertEquals(verdict, judge(gap, atMost(20)).verdict());
  }

  @Test
  void bounceThatDecidesIsNamed() {
    Measured gap = new Outcomes.Gap(20.5, 0.1).bouncing(1).outcome();
    assertEquals(
        "mains switch bounced: 20.50 ms from its first opening is longer than the declared maximum"
            + " of 20 ms, 19.50 ms ± 0.10 ms from its last is not shown to be",
        judge(gap, atMost(20)).reason());
  }

  @Test
  void gapIsStatedToTheDigitsOfItsUncertainty() {
    Measured gap = Outcomes.gap(9.23612, 0.01234);
    assertEquals(
        "9.236 ms ± 0.012 ms is within the declared 20 ms (taken as a maximum)",
        judge(gap, DeclaredClaim.ofMillis(20, "20 ms")).reason());
    assertEquals(
        "9.236 ms ± 0.012 ms is longer than the declared maximum of < 8 ms",
        judge(gap, below(8)).reason());
  }

  @Test
  void usableTimeIsToldWhereItIsMuchLonger() {
    Outcomes.Gap gap = new Outcomes.Gap(9.2, 0.1);
    assertTrue(
        judge(gap.usableAfter(15.5).outcome(), atMost(20))
            .reason()
            .endsWith("; usable after 15.500 ms"));
    assertTrue(
        judge(gap.usableAfter(10.1).outcome(), atMost(20)).reason().endsWith("maximum of 20 ms"));
    assertTrue(
        judge(gap.usableAfter(Double.NaN).outcome(), atMost(20))
            .reason()
            .endsWith("; the voltage does not settle within 10 % in the record"));
  }

  @ParameterizedTest
  @CsvSource({"5, 1, PASS", "19.5, 1, INCONCLUSIVE", "30, 1, FAIL"})
  void theLongestFurtherInterruptionIsJudged(double millis, double uncertainty, Verdict expected) {
    Outcomes.Gap gap =
        new Outcomes.Gap(9.2, 0.1).with(new FurtherInterruptions(2, millis, uncertainty));
    Judgement found = judge(gap.outcome(), atMost(20));
    assertEquals(expected, found.verdict());
    assertEquals(
        expected != Verdict.PASS,
        found.reason().startsWith("further interruption, the longest of 2: "),
        found.reason());
  }

  @ParameterizedTest
  @CsvSource({"5, INCONCLUSIVE", "30, FAIL"})
  void aFurtherInterruptionInWhichTheRecordEndsForbidsAPass(double millis, Verdict expected) {
    Outcomes.Gap gap =
        new Outcomes.Gap(9.2, 0.1).with(new FurtherInterruptions(1, millis, 0, true));
    assertEquals(expected, judge(gap.outcome(), atMost(20)).verdict());
  }

  /** 20.5 ms from the first opening, 14 ms from the last: that alone would leave it open. */
  @Test
  void aBouncedSwitchHidesNoFurtherInterruption() {
    Outcomes.Gap gap = new Outcomes.Gap(20.5, 0.1).bouncing(6.5);
    assertEquals(Verdict.INCONCLUSIVE, judge(gap.outcome(), atMost(20)).verdict());
    Judgement found = judge(gap.with(new FurtherInterruptions(1, 200.0, 1)).outcome(), atMost(20));
    assertEquals(Verdict.FAIL, found.verdict());
    assertTrue(found.reason().startsWith("further interruption"), found.reason());
  }

  @Test
  void theUncertaintyOfTheLongestCountsWhereTheRecordEndsInAnother() {
    Outcomes.Gap gap =
        new Outcomes.Gap(9.2, 0.1).with(new FurtherInterruptions(2, 20.3, 1.0, true));
    assertEquals(Verdict.INCONCLUSIVE, judge(gap.outcome(), atMost(20)).verdict());
  }

  /** What opens at a restoration is a contact of the unit, which has no switch to excuse it. */
  @Test
  void aRestorationIsJudgedFromTheFirstOpening() {
    Measured gap = new Outcomes.Gap(20.5, 0.1).bouncing(1).outcome();
    Measured restored =
        new Measured(
            Event.RESTORATION,
            gap.lossSeconds(),
            gap.lastOpeningSeconds(),
            gap.firstReturnSeconds(),
            gap.returnSeconds(),
            gap.transferMillis(),
            gap.budget(),
            gap.furtherInterruptions(),
            gap.deadMillis(),
            gap.usableMillis(),
            gap.recoveryMillis(),
            gap.pointOnWaveDegrees(),
            gap.supplies(),
            gap.cleanness(),
            gap.others());
    assertEquals(Verdict.INCONCLUSIVE, judge(gap, atMost(20)).verdict());
    assertEquals(Verdict.FAIL, judge(restored, atMost(20)).verdict());
    assertTrue(OutcomeNotes.of(restored).get(0).startsWith("the unit's contact bounced"));
  }

  @Test
  void furtherInterruptionsOfUnknownLengthForbidAPass() {
    Outcomes.Gap gap = new Outcomes.Gap(9.2, 0.1).withFurtherInterruptions(2);
    assertEquals(Verdict.INCONCLUSIVE, judge(gap.outcome(), atMost(20)).verdict());
    assertEquals(Verdict.FAIL, judge(gap.outcome(), atMost(8)).verdict());
  }

  @ParameterizedTest
  @CsvSource({
    "250, 0, FAIL",
    "20.05, 0, INCONCLUSIVE", // the record ends within the guard band
    "15, 0, INCONCLUSIVE", // the record is too short
    "20.5, 1, INCONCLUSIVE" // only the first opening fails
  })
  void noReturnFailsWhereTheRecordIsLongEnough(
      double atLeastMillis, double bounceMillis, Verdict verdict) {
    NoReturn noReturn = Outcomes.noReturn(atLeastMillis, 0.1, bounceMillis);
    assertEquals(verdict, judge(noReturn, atMost(20)).verdict());
  }

  @ParameterizedTest
  @CsvSource({"0", "20"})
  void noInterruptionPassesEvenADeclaredZero(double ratedMillis) {
    Judgement judgement = judge(Outcomes.noInterruption(0.25), atMost(ratedMillis));
    assertEquals(Verdict.PASS, judgement.verdict());
    assertEquals("no interruption longer than 0.250 ms", judgement.reason());
  }

  @Test
  void measuredGapNeverPassesADeclaredZero() {
    assertEquals(Verdict.FAIL, judge(Outcomes.gap(0.5, 0.1), atMost(0)).verdict());
    assertEquals(Verdict.INCONCLUSIVE, judge(Outcomes.gap(0.05, 0.1), atMost(0)).verdict());
  }

  @Test
  void refusedCaptureHasNoJudgement() {
    assertEquals(Optional.empty(), TrialVerdict.judge(new Refused("clipped"), atMost(20)));
  }

  @Test
  void typicalValueIsNoLimitForATrial() {
    assertEquals(
        Optional.empty(), TrialVerdict.judge(Outcomes.gap(25, 0.1), SeriesVerdictTest.typical(20)));
  }

  @ParameterizedTest
  @CsvSource({"NaN, 0.1", "9, NaN", "25, NaN", "9, Infinity"})
  void whatIsNotANumberDecidesNothing(double millis, double uncertaintyMillis) {
    assertEquals(
        Verdict.INCONCLUSIVE, judge(Outcomes.gap(millis, uncertaintyMillis), atMost(20)).verdict());
  }

  private static Judgement judge(Outcome outcome, DeclaredClaim claim) {
    return TrialVerdict.judge(outcome, claim).orElseThrow();
  }

  static DeclaredClaim atMost(double millis) {
    return claim(millis, false);
  }

  private static DeclaredClaim below(double millis) {
    return claim(millis, true);
  }

  private static DeclaredClaim claim(double millis, boolean strictlyBelow) {
    return new DeclaredClaim(
        "as printed",
        millis,
        strictlyBelow,
        DeclaredClaim.Kind.MAXIMUM,
        "unknown",
        "unknown",
        "unknown");
  }
}
