package mainsgap.cli;

import static mainsgap.cli.SeriesExamples.MEASURED;
import static mainsgap.cli.SeriesExamples.NO_RETURN;
import static mainsgap.cli.SeriesExamples.trial;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.List;
import mainsgap.bench.SeriesEnd;
import mainsgap.transfer.outcome.Verdict;
import org.junit.jupiter.api.Test;

/** Names and their order, on which scripts depend. */
class SeriesJsonTest {
  static final List<String> CAPTURE_NAMES =
      List.of(
          "file outcome reason event interruption transferTimeMs transferTimeAtLeastMs"
              .concat(" expandedUncertaintyMs lossMs lastOpeningMs returnMs firstReturnMs")
              .concat(" furtherInterruptions deadTimeMs usableTimeMs recoveryTimeMs holdThroughMs")
              .concat(" pointOnWaveDeg phaseStepDeg frequencyHz frequencyStepMilliHz nominalVolts")
              .concat(" amplitudeStepPercent peakOvershootPercent peakUndershootPercent")
              .concat(" thdBeforePercent thdAfterPercent dcOffsetPercent settlingTimeMs restrikes")
              .concat(
                  " residualPercent clippedAfterReturn thdBeforeCycles thdAfterCycles crestFactor")
              .concat(" settledDeviationPercent settlingTo3PercentMs steepestVoltsPerMicrosecond")
              .concat(" residualTwoCyclesPercent residualFiveCyclesPercent cleanness")
              .concat(" longestFurtherInterruptionMs longestFurtherExpandedUncertaintyMs")
              .concat(" endsInFurtherInterruption")
              .concat(" secondLegTransferTimeMs secondLegTransferTimeAtLeastMs")
              .concat(" secondLegExpandedUncertaintyMs secondLegCommonUncertaintyMs")
              .concat(" secondLegFurtherInterruptions secondLegLongestFurtherMs")
              .concat(" secondLegLongestFurtherExpandedUncertaintyMs secondLegEndsInFurther")
              .concat(" secondLegReason loadCurrentAfterPercent")
              .concat(" loadRodeThrough markerMs comesBackTooLate")
              .concat(" decisionRule ruleOutcome verdict uncertaintyBudget coverageFactor")
              .concat(" voltageTolerance")
              .split(" "));

  private final JsonNode series = series();

  @Test
  void theSeriesHasItsNamesInOrder() {
    assertEquals(List.of("session", "unit", "ratedMs", "trials", "summary"), names(series));
    assertEquals(
        List.of(
            "n",
            "meanMs",
            "standardDeviationMs",
            "medianMs",
            "maxMs",
            "upperToleranceBoundMs",
            "verdict",
            "reason",
            "setAside"),
        names(series.get("summary")));
    assertEquals("series.mainsgap", series.get("session").asText());
    assertEquals(20, series.get("ratedMs").asDouble());
    assertEquals(12.75, series.get("summary").get("upperToleranceBoundMs").asDouble());
    assertEquals("INCONCLUSIVE", series.get("summary").get("verdict").asText());
  }

  @Test
  void eachTrialHasTheNamesOfACaptureThenNumberAndState() {
    List<String> expected = new ArrayList<>(CAPTURE_NAMES);
    expected.addAll(List.of("number", "state"));
    series.get("trials").forEach(trial -> assertEquals(expected, names(trial)));
    JsonNode first = series.get("trials").get(0);
    assertEquals(8.41678, first.get("transferTimeMs").asDouble());
    assertEquals(0.052, first.get("expandedUncertaintyMs").asDouble(), 1e-12);
    assertEquals("PASS", first.get("verdict").asText());
    assertEquals(1, first.get("number").asInt());
  }

  @Test
  void eachMeasuredTrialHasItsBudgetLineByLine() {
    JsonNode trial = series.get("trials").get(0);
    JsonNode line = trial.get("uncertaintyBudget").get(0);
    assertEquals(List.of("source", "standardUncertaintyMs", "common"), names(line));
    assertEquals("edges", line.get("source").asText());
    assertEquals(0.026, line.get("standardUncertaintyMs").asDouble());
    assertTrue(line.get("common").asBoolean());
    assertEquals(2, trial.get("coverageFactor").asDouble());
  }

  @Test
  void eachGapHasItsStandingOnTheToleranceCurves() {
    JsonNode curve = series.get("trials").get(0).get("voltageTolerance").get("gap").get(0);
    assertEquals("ITI curve", curve.get("curve").asText());
    assertEquals("inside", curve.get("standing").asText());
  }

  @Test
  void theSummaryHasTheMedianAndTheReason() {
    assertEquals(8.4, series.get("summary").get("medianMs").asDouble());
    assertEquals("not yet shown", series.get("summary").get("reason").asText());
  }

  @Test
  void aTrialWithoutReturnHasNoTransferTime() {
    JsonNode second = series.get("trials").get(1);
    assertEquals("measured", second.get("outcome").asText());
    assertTrue(second.get("transferTimeMs").isNull());
    assertEquals(321.06, second.get("transferTimeAtLeastMs").asDouble());
  }

  private static JsonNode series() {
    SeriesEnd end =
        SeriesExamples.end(
            SeriesEnd.Kind.COMPLETE,
            trial(1, MEASURED, Verdict.PASS),
            trial(2, NO_RETURN, Verdict.FAIL));
    try {
      return new ObjectMapper().readTree(SeriesJson.of(end, 20.0));
    } catch (JsonProcessingException e) {
      throw new AssertionError(e);
    }
  }

  static List<String> names(JsonNode object) {
    List<String> names = new ArrayList<>();
    object.fieldNames().forEachRemaining(names::add);
    return names;
  }
}
