package mainsgap.scope;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumSet;
import java.util.Map;
import java.util.Set;
import mainsgap.scope.CaptureRequest.Input;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.Event;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CapturePlannerTest {
  private static final Set<CatchMethod> BOTH = EnumSet.allOf(CatchMethod.class);
  private static final ScopeLimits LIMITS = limits(2_000_000, BOTH);
  private static final Map<ChannelRole, Input> OUTPUT =
      Map.of(ChannelRole.OUTPUT, Input.ofSupply(1, 100));
  private static final Map<ChannelRole, Input> BOTH_SIDES =
      Map.of(ChannelRole.OUTPUT, Input.ofSupply(1, 100), ChannelRole.MAINS, Input.ofSupply(2, 100));

  @Test
  void rangeLeavesHalfThePeakAsHeadroom() {
    CapturePlan.ChannelPlan channel =
        CapturePlanner.plan(loss(230, 50, OUTPUT, null), LIMITS).channel(ChannelRole.OUTPUT);
    assertEquals(490, channel.fullScalePeakVolts()); // 1.5 * 230 V * sqrt 2 = 488 V, rounded up
    assertEquals(325.27, channel.expectedPeakVolts(), 0.01);
  }

  /** (180 + 2 asin 0.3)/360 of a period: 11.94 ms at 50 Hz, 9.95 ms at 60 Hz, with a margin. */
  @ParameterizedTest
  @CsvSource({"50, 11.9, 13.5", "60, 9.9, 11.5"})
  void triggerWaitsLongerThanASineIsQuiet(double hertz, double aboveMillis, double belowMillis) {
    PlannedTrigger trigger = triggered(loss(230, hertz, BOTH_SIDES, null)).trigger();
    assertNotNull(trigger);
    double millis = trigger.timeSeconds() * 1000;
    assertTrue(millis > aboveMillis + 0.5 && millis < belowMillis, "found " + millis);
    assertEquals(0.3 * 325.27, trigger.levelVolts(), 0.01);
  }

  @Test
  void triggeredRecordHoldsTheSupplyBeforeAndAfter() {
    CapturePlan plan = triggered(loss(230, 50, BOTH_SIDES, null));
    PlannedTrigger trigger = plan.trigger();
    assertNotNull(trigger);
    assertTrue(plan.preTriggerSeconds() >= trigger.timeSeconds() + 5 * 0.02);
    double after = plan.durationSeconds() - plan.preTriggerSeconds();
    assertTrue(after >= 0.02 + 0.1 + 0.2, "a transfer past the rated 20 ms, and ten cycles");
    assertTrue(1 / plan.intervalSeconds() >= 100_000);
  }

  @Test
  void mainsChannelIsTheSourceOfTheTrigger() {
    PlannedTrigger trigger = triggered(loss(230, 50, BOTH_SIDES, null)).trigger();
    assertNotNull(trigger);
    assertEquals(ChannelRole.MAINS, trigger.source());
  }

  @Test
  void outputAloneIsCaughtByAForcedRecordUnlessWished() {
    assertEquals(
        CatchMethod.FORCED_RECORD,
        CapturePlanner.plan(loss(230, 50, OUTPUT, null), LIMITS).method());
    CapturePlan wished =
        CapturePlanner.plan(loss(230, 50, OUTPUT, CatchMethod.TIME_OUT_TRIGGER), LIMITS);
    assertEquals(CatchMethod.TIME_OUT_TRIGGER, wished.method());
    assertTrue(
        String.join(" ", wished.explanation()).contains("may pass unseen"),
        "its blind zone is told");
  }

  @Test
  void handGetsTenSecondsAtAHundredKilosamples() {
    CapturePlan plan = CapturePlanner.plan(loss(230, 50, OUTPUT, null), LIMITS);
    assertEquals(1_000_000, plan.samples());
    assertEquals(1e-5, plan.intervalSeconds(), 1e-15);
    assertEquals(0, plan.preTriggerSeconds());
    assertTrue(String.join(" ", plan.explanation()).contains("10 s at 100 kS/s"));
  }

  @ParameterizedTest
  @CsvSource({
    "1000000, 1000000, 1e-5",
    "500000,   500000, 2e-5",
    "250000,   250000, 2e-5", // 5 s: a shorter window rather than a coarse one
    "100000,   100000, 1e-4",
    "60000,     50000, 1e-4", // 5 s at the least rate
  })
  void smallerMemoryMeansFirstAShorterThenACoarserRecord(
      int memory, int samples, double intervalSeconds) {
    CapturePlan plan = CapturePlanner.plan(loss(230, 50, OUTPUT, null), limits(memory, BOTH));
    assertEquals(samples, plan.samples());
    assertEquals(intervalSeconds, plan.intervalSeconds(), 1e-15);
  }

  @Test
  void tooSmallAMemoryIsRefused() {
    assertEquals(
        "a record of 5 s needs 50000 samples at 10 kS/s, but the instrument holds 20000 samples of"
            + " at most 10 ms each: use an instrument with more memory, or declare a shorter rated"
            + " time",
        refusal(loss(230, 50, OUTPUT, null), limits(20_000, BOTH)));
  }

  @Test
  void restorationWaitsForTheUnitToGoBack() {
    CaptureRequest request =
        new CaptureRequest(Event.RESTORATION, 230, 50, 0.02, BOTH_SIDES, true, null);
    CapturePlan plan = CapturePlanner.plan(request, LIMITS);
    assertEquals(CatchMethod.FORCED_RECORD, plan.method());
    assertTrue(plan.durationSeconds() >= 18);
  }

  @Test
  void aTimeOutTriggerForARestorationIsRefused() {
    CaptureRequest request =
        new CaptureRequest(
            Event.RESTORATION, 230, 50, 0.02, OUTPUT, true, CatchMethod.TIME_OUT_TRIGGER);
    assertTrue(
        refusal(request, LIMITS).startsWith("a time-out trigger cannot see mains come back"));
  }

  @Test
  void aMethodThatTheInstrumentLacksIsRefused() {
    assertEquals(
        "this instrument has no time-out trigger in its profile: catch the loss by a forced record",
        refusal(
            loss(230, 50, OUTPUT, CatchMethod.TIME_OUT_TRIGGER),
            limits(2_000_000, EnumSet.of(CatchMethod.FORCED_RECORD))));
  }

  @Test
  void aProbeThatIsTooSmallIsRefusedWithTheFactorToUse() {
    assertEquals(
        "channel 1 reaches ±40 V with a probe factor of 1, below 1.5 times the 325 V peak: use a"
            + " probe rated for this voltage with a factor of 13 or more",
        refusal(loss(230, 50, Map.of(ChannelRole.OUTPUT, Input.ofSupply(1, 1)), null), LIMITS));
  }

  @Test
  void aChannelForTwoRolesIsRefused() {
    Map<ChannelRole, Input> twice =
        Map.of(
            ChannelRole.OUTPUT, Input.ofSupply(1, 100), ChannelRole.MAINS, Input.ofSupply(1, 100));
    assertEquals(
        "channel 1 is both output and mains: give each its own channel",
        refusal(loss(230, 50, twice, null), LIMITS));
  }

  @Test
  void aChannelThatIsNotThereIsRefused() {
    assertTrue(
        refusal(loss(230, 50, Map.of(ChannelRole.OUTPUT, Input.ofSupply(5, 100)), null), LIMITS)
            .startsWith("output is on channel 5, but the instrument has 4 channels"));
  }

  @Test
  void anUndeclaredTransferTimeIsAssumedAndSaid() {
    CaptureRequest request = new CaptureRequest(Event.LOSS, 120, 60, null, OUTPUT, true, null);
    String explanation = String.join(" ", CapturePlanner.plan(request, LIMITS).explanation());
    assertTrue(explanation.contains("no transfer time is declared, so one of 100 ms is assumed"));
  }

  @ParameterizedTest
  @CsvSource({"1, 1", "1.01, 2", "2.1, 5", "5.1, 10", "0.0003, 0.0005", "0.1, 0.1", "7e-6, 1e-5"})
  void stepsGoUpInOneTwoFive(double value, double step) {
    assertEquals(step, RoundValues.up125(value), step * 1e-12);
  }

  private static CapturePlan triggered(CaptureRequest request) {
    CapturePlan plan = CapturePlanner.plan(request, LIMITS);
    assertEquals(CatchMethod.TIME_OUT_TRIGGER, plan.method());
    return plan;
  }

  private static String refusal(CaptureRequest request, ScopeLimits limits) {
    return String.valueOf(
        assertThrows(ScopeException.class, () -> CapturePlanner.plan(request, limits))
            .getMessage());
  }

  private static CaptureRequest loss(
      double volts, double hertz, Map<ChannelRole, Input> inputs, @Nullable CatchMethod wished) {
    return new CaptureRequest(Event.LOSS, volts, hertz, 0.02, inputs, true, wished);
  }

  private static ScopeLimits limits(int memory, Set<CatchMethod> methods) {
    return new ScopeLimits(4, 0.004, 40, 1e-8, 0.01, 1000, memory, 12, 25, methods);
  }
}
