package mainsgap.transfer.claim;

import static mainsgap.transfer.claim.TrialVerdictTest.atMost;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import mainsgap.transfer.outcome.Judgement;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Outcomes;
import mainsgap.transfer.outcome.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class DecisionRuleTest {

  /**
   * ILAC-G8:09/2019, 4.2.3: pass up to TL - w, conditional pass to TL, conditional fail to TL + w,
   * fail above. Limit 10 ms, u = 0.2 ms, w = U = 0.4 ms; the probabilities are Phi((TL - y) / u) of
   * JCGM 106, from a table of the normal distribution.
   */
  @ParameterizedTest
  @CsvSource({
    "9.5, pass, PASS, .9938",
    "9.6, pass, PASS, .9772",
    "9.8, conditional pass, INCONCLUSIVE, .8413",
    "10.0, conditional pass, INCONCLUSIVE, .5",
    "10.1, conditional fail, INCONCLUSIVE, .3085",
    "10.4, conditional fail, INCONCLUSIVE, .0228",
    "10.5, fail, FAIL, .0062"
  })
  void fourWayHasTwoConditionalZones(
      double millis, String statement, Verdict verdict, double probability) {
    Measured gap = Outcomes.gap(millis, 0.4);
    Judgement judgement = judge(gap, 10, DecisionRule.FOUR_WAY);
    assertEquals(statement, judgement.ruleOutcome());
    assertEquals(verdict, judgement.verdict());
    assertEquals(probability, Conformance.of(millis, 0.2, atMost(10)).orElseThrow(), 5e-5);
  }

  /** ILAC-G8:09/2019, 4.2.1: the acceptance limit is the tolerance limit. */
  @ParameterizedTest
  @CsvSource({"9.8, PASS, pass", "10.0, PASS, pass", "10.01, FAIL, fail", "10.5, FAIL, fail"})
  void simpleAcceptanceDisregardsTheUncertainty(double millis, Verdict verdict, String statement) {
    Judgement judgement = judge(Outcomes.gap(millis, 0.4), 10, DecisionRule.SIMPLE);
    assertEquals(verdict, judgement.verdict());
    assertEquals(statement, judgement.ruleOutcome());
  }

  /** ILAC-G8:09/2019, 4.2.2: the acceptance limit is TL - U, and there are two statements. */
  @ParameterizedTest
  @CsvSource({"9.6, PASS, pass", "9.61, FAIL, fail", "10.0, FAIL, fail", "10.5, FAIL, fail"})
  void twoWayFailsWhatIsNotShownToBeWithin(double millis, Verdict verdict, String statement) {
    Judgement judgement = judge(Outcomes.gap(millis, 0.4), 10, DecisionRule.TWO_WAY);
    assertEquals(verdict, judgement.verdict());
    assertEquals(statement, judgement.ruleOutcome());
  }

  /**
   * A published calibration example: maximum permissible error 0.003 mm, U = 0.0010 mm, so that
   * deviations to 0.002 mm are accepted. 0.0017 mm conforms; 0.0025 mm lies between, where its page
   * says non-conforming and ILAC-G8:09/2019, 4.2.3, conditional pass. Here in thousandths.
   */
  @ParameterizedTest
  @CsvSource({
    "1.7, TWO_WAY, pass",
    "2.0, TWO_WAY, pass",
    "2.5, TWO_WAY, fail",
    "1.7, FOUR_WAY, pass",
    "2.5, FOUR_WAY, conditional pass",
    "2.5, SIMPLE, pass",
    "2.5, GUARDED, neither accepted nor rejected"
  })
  void theRuleDecidesTheGreyZone(double thousandths, DecisionRule rule, String statement) {
    assertEquals(statement, judge(Outcomes.gap(thousandths, 1), 3, rule).ruleOutcome());
  }

  /**
   * The speed radar of JCGM 106: u is 2 % of the reading, and above 107 km/h (from memory) the
   * limit of 100 km/h is exceeded with 99.9 %. 100 / (1 - 3.090 x 0.02) is 106.6.
   */
  @Test
  void radarReadingOf107ExceedsTheLimitBeyondDoubt() {
    assertTrue(1 - Conformance.probability(100, 107, 0.02 * 107) > 0.999);
    assertTrue(1 - Conformance.probability(100, 106, 0.02 * 106) < 0.999);
    assertEquals(0.999, 1 - Conformance.probability(100, 106.587, 0.02 * 106.587), 1e-5);
  }

  /** JCGM 106: a one-sided risk of 5 % takes w = 1.645 u, one of 2.3 % w = 2 u. */
  @ParameterizedTest
  @CsvSource({"1.645, 0.05", "2, 0.023"})
  void guardBandSetsTheRiskAtTheAcceptanceLimit(double standardUncertainties, double risk) {
    assertEquals(
        risk, 1 - Conformance.probability(10, 10 - 0.2 * standardUncertainties, 0.2), 3e-4);
  }

  @ParameterizedTest
  @CsvSource({"NaN, 9, 1", "10, Infinity, 1", "10, 9, 0", "10, 9, NaN", "10, 9, -1"})
  void probabilityNeedsNumbers(double limit, double millis, double standard) {
    assertThrows(
        IllegalArgumentException.class, () -> Conformance.probability(limit, millis, standard));
  }

  @ParameterizedTest
  @EnumSource
  void theRuleGoesWithTheResult(DecisionRule rule) {
    assertEquals(rule.title(), judge(Outcomes.gap(9, 0.4), 10, rule).decisionRule());
    assertEquals(Optional.of(rule), DecisionRule.ofWord(rule.word()));
  }

  @ParameterizedTest
  @EnumSource
  void noRuleDecidesWhatIsNotANumber(DecisionRule rule) {
    for (Measured gap :
        new Measured[] {Outcomes.gap(Double.NaN, 0.1), Outcomes.gap(25, Double.NaN)}) {
      assertEquals(Verdict.INCONCLUSIVE, judge(gap, 20, rule).verdict());
    }
  }

  @ParameterizedTest
  @EnumSource
  void noRuleJudgesATypicalValueAsALimit(DecisionRule rule) {
    assertEquals(
        Optional.empty(),
        TrialVerdict.judge(Outcomes.gap(25, 0.1), SeriesVerdictTest.typical(20), rule));
  }

  @ParameterizedTest
  @CsvSource({
    "GUARDED, neither accepted nor rejected",
    "SIMPLE, no statement",
    "TWO_WAY, no statement",
    "FOUR_WAY, no statement"
  })
  void bounceThatDecidesIsInconclusiveByAnyRule(DecisionRule rule, String statement) {
    Judgement judgement = judge(new Outcomes.Gap(20.5, 0.1).bouncing(1).outcome(), 20, rule);
    assertEquals(Verdict.INCONCLUSIVE, judgement.verdict());
    assertEquals(statement, judgement.ruleOutcome());
    assertTrue(judgement.reason().startsWith("mains switch bounced"), judgement.reason());
  }

  @ParameterizedTest
  @EnumSource
  void noReturnCanFailByAnyRuleAndPassByNone(DecisionRule rule) {
    assertEquals(Verdict.FAIL, judge(Outcomes.noReturn(250, 0.1, 0), 20, rule).verdict());
    assertEquals(Verdict.INCONCLUSIVE, judge(Outcomes.noReturn(15, 0.1, 0), 20, rule).verdict());
  }

  @ParameterizedTest
  @EnumSource
  void furtherInterruptionsForbidAPassByAnyRule(DecisionRule rule) {
    Measured gap = new Outcomes.Gap(9.2, 0.1).withFurtherInterruptions(1).outcome();
    assertEquals(Verdict.INCONCLUSIVE, judge(gap, 20, rule).verdict());
  }

  @Test
  void theOtherRulesTellTheirRisk() {
    assertEquals(
        "9.80 ms ± 0.40 ms against the declared maximum of 10 ms: conditional pass (probability of"
            + " conformance 84.13 %)",
        judge(Outcomes.gap(9.8, 0.4), 10, DecisionRule.FOUR_WAY).reason());
  }

  @Test
  void aSeriesThatFailsByTheRuleAloneDoesNotSayThatMoreIsShown() {
    var outcomes =
        java.util.List.<Outcome>of(
            Outcomes.gap(9.8, 0.4), Outcomes.gap(9, 0.4), Outcomes.gap(9.1, 0.4));
    SeriesSummary summary = SeriesVerdict.judge(outcomes, atMost(10), DecisionRule.TWO_WAY);
    assertEquals(Verdict.FAIL, summary.verdict());
    assertEquals(
        "1 of 3 failed against the declared maximum of 10 ms by " + DecisionRule.TWO_WAY.title(),
        summary.reason());
  }

  private static Judgement judge(Outcome outcome, double limitMillis, DecisionRule rule) {
    return TrialVerdict.judge(outcome, atMost(limitMillis), rule).orElseThrow();
  }
}
