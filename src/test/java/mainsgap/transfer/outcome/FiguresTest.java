package mainsgap.transfer.outcome;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Stream;
import mainsgap.signal.Event;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class FiguresTest {
  private static final Supplies SUPPLIES = new Supplies(50, Double.NaN, null, -12.5);
  private static final Cleanness CLEANNESS =
      new Cleanness(
          18.2,
          true,
          4.5,
          new Cleanness.Distortion(2.5, 6),
          new Cleanness.Distortion(0.5, 10),
          -0.25,
          1.41,
          null,
          1.75,
          null,
          1,
          12.5,
          new Cleanness.Residual(8.5, 4.5, null));
  private static final Judgement FAILED =
      new Judgement(Verdict.FAIL, "guarded", "FAIL", "9 ms - 0.2 ms is over 5 ms");

  private static Map<String, Object> filled(Outcome outcome, @Nullable Judgement judgement) {
    Map<String, @Nullable Object> figures = Figures.of(outcome, judgement, 230);
    assertEquals(Figures.NAMES, List.copyOf(figures.keySet()));
    Map<String, Object> filled = new TreeMap<>();
    figures.forEach(
        (name, value) -> {
          if (value != null) {
            filled.put(name, Objects.requireNonNull(value));
          }
        });
    return filled;
  }

  @Test
  void aMeasuredGapHasItsFiguresInMilliseconds() {
    Measured measured =
        new Measured(
            Event.LOSS,
            0.25,
            0.251,
            0.258,
            0.259,
            9,
            new UncertaintyBudget(
                List.of(new UncertaintyBudget.Component("change points", 0.1)), 2),
            FurtherInterruptions.ofUnknownLength(1),
            7.5,
            null,
            12.0,
            90,
            SUPPLIES,
            null,
            OtherChannels.NONE);
    assertEquals(
        Map.ofEntries(
            Map.entry("outcome", "measured"),
            Map.entry("reason", FAILED.reason()),
            Map.entry("event", "loss"),
            Map.entry("interruption", true),
            Map.entry("transferTimeMs", 9.0),
            Map.entry("expandedUncertaintyMs", 0.2),
            Map.entry("lossMs", 250.0),
            Map.entry("lastOpeningMs", 251.0),
            Map.entry("firstReturnMs", 258.0),
            Map.entry("returnMs", 259.0),
            Map.entry("furtherInterruptions", 1),
            Map.entry("deadTimeMs", 7.5),
            Map.entry("recoveryTimeMs", 12.0),
            Map.entry("pointOnWaveDeg", 90.0),
            Map.entry("phaseStepDeg", -12.5),
            Map.entry("frequencyHz", 50.0),
            Map.entry("nominalVolts", 230.0),
            Map.entry("decisionRule", "guarded"),
            Map.entry("ruleOutcome", "FAIL"),
            Map.entry("verdict", "FAIL")),
        filled(measured, FAILED));
  }

  @Test
  void aGapWithoutReturnHasNoTransferTimeButALeastOne() {
    Outcome noReturn = new NoReturn(Event.LOSS, 0.25, 0.25, 29, 0.1, 45, 28, SUPPLIES, false, null);
    Map<String, Object> filled = filled(noReturn, null);
    assertEquals(29.0, filled.get("transferTimeAtLeastMs"));
    assertEquals(false, filled.containsKey("transferTimeMs"));
    assertEquals(0.1, filled.get("expandedUncertaintyMs"));
    assertEquals("measured", filled.get("outcome"));
    assertEquals(false, filled.containsKey("returnMs"));
  }

  @Test
  void noInterruptionIsZeroWithTheShortestVisibleGapAsUncertainty() {
    Outcome none =
        new NoInterruption(Event.RESTORATION, 0.3, "the frequency changed", 0.25, 270, SUPPLIES);
    Map<String, Object> filled = filled(none, null);
    assertEquals(false, filled.get("interruption"));
    assertEquals(0.0, filled.get("transferTimeMs"));
    assertEquals(0.3, filled.get("expandedUncertaintyMs"));
    assertEquals("restoration", filled.get("event"));
    assertEquals("the frequency changed", filled.get("reason"));
  }

  @Test
  void aRefusalHasItsReasonAlone() {
    assertEquals(
        Map.of("outcome", "refused", "reason", "clipped", "nominalVolts", 230.0),
        filled(new Refused("clipped"), null));
  }

  static Stream<Outcome> outcomes() {
    Supplies supplies = new Supplies(49.9, 12.5, null, -12.5);
    UncertaintyBudget budget =
        new UncertaintyBudget(List.of(new UncertaintyBudget.Component("noise", 0.1)), 2.1);
    return Stream.of(
        new Measured(
            Event.LOSS,
            0.25,
            0.251,
            0.258,
            0.259,
            9,
            budget,
            FurtherInterruptions.ofUnknownLength(2),
            7.5,
            null,
            12.0,
            90,
            supplies,
            null,
            OtherChannels.NONE),
        new Measured(
            Event.LOSS,
            0.25,
            0.251,
            0.258,
            0.259,
            9,
            budget,
            new FurtherInterruptions(2, 3.25, 0.5),
            7.5,
            null,
            12.0,
            90,
            supplies,
            CLEANNESS,
            OtherChannels.NONE),
        new NoReturn(Event.LOSS, 0.25, 0.25, 29, 0.1, 45, 28, supplies, false, null),
        new NoInterruption(Event.RESTORATION, 0.3, "the phase stepped", 0.25, 270, supplies),
        new Refused("clipped"));
  }

  @ParameterizedTest
  @MethodSource("outcomes")
  void theOutcomeComesBackFromItsFigures(Outcome outcome) {
    UncertaintyBudget budget = outcome instanceof Measured measured ? measured.budget() : null;
    assertEquals(outcome, OutcomeOfFigures.of(Figures.of(outcome, null, 230), budget));
  }
}
