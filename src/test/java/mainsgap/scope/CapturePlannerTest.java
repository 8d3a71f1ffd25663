package mainsgap.scope;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import mainsgap.scope.CaptureRequest.Input;
import mainsgap.scope.EventSignal.Follows;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.Event;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CapturePlannerTest {
  private static final Set<CatchMethod> BOTH = EnumSet.allOf(CatchMethod.class);
  private static final ScopeLimits LIMITS = limits(2_000_000, BOTH);
  private static final EventSignal MAINS_PRESENT = new EventSignal(Follows.MAINS, 0, 5, true, 0.03);
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
        String.join(" ", wished.explanation())
            .contains("Blind zone: a gap of 12.94 ms or more always trips it"),
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
        refusal(loss(230, 50, OUTPUT, CatchMethod.FORCED_RECORD), limits(20_000, BOTH)));
  }

  /** The order: mains, a signal, the forced record, the output by its blind zone, back to back. */
  @ParameterizedTest
  @CsvSource({
    "output mains marker external, 2000000, TIME_OUT_TRIGGER",
    "output marker external,       2000000, EDGE_TRIGGER",
    "output external,              2000000, EXTERNAL_TRIGGER",
    "output,                       2000000, FORCED_RECORD",
    "output,                         20000, WINDOW_TRIGGER",
    "output mains,                   20000, TIME_OUT_TRIGGER"
  })
  void surestWayIsChosenForALoss(String wired, int memory, CatchMethod expected) {
    CapturePlan plan =
        CapturePlanner.plan(wired(Event.LOSS, wired, 300, MAINS_PRESENT), limits(memory, BOTH));
    assertEquals(expected, plan.method());
    assertEquals(expected == CatchMethod.WINDOW_TRIGGER, plan.blindness().isAny());
    assertEquals(0, plan.unitWaitSeconds());
  }

  @ParameterizedTest
  @CsvSource({
    "TIME_OUT_TRIGGER DROPOUT_TRIGGER, TIME_OUT_TRIGGER",
    "DROPOUT_TRIGGER, DROPOUT_TRIGGER",
    "PULSE_WIDTH_TRIGGER DROPOUT_TRIGGER, PULSE_WIDTH_TRIGGER",
    "'', BACK_TO_BACK_RECORDS"
  })
  void littleMemoryMeansTheSmallestBlindZoneThatIsOffered(String offered, CatchMethod expected) {
    Set<CatchMethod> methods =
        EnumSet.of(CatchMethod.FORCED_RECORD, CatchMethod.BACK_TO_BACK_RECORDS);
    Stream.of(offered.split(" "))
        .filter(word -> !word.isEmpty())
        .map(CatchMethod::valueOf)
        .forEach(methods::add);
    CapturePlan plan = CapturePlanner.plan(loss(230, 50, OUTPUT, null), limits(20_000, methods));
    assertEquals(expected, plan.method());
    assertTrue(plan.blindness().isAny());
  }

  @ParameterizedTest
  @CsvSource({
    "output mains marker, 300, UNIT,  EDGE_TRIGGER,  300",
    "output mains,         30, MAINS, EDGE_TRIGGER,    0", // 50 s at 25 us or better
    "output mains,        100, MAINS, EDGE_TRIGGER,    0",
    "output,               20, MAINS, FORCED_RECORD,   0",
    "output mains,        300, MAINS, WINDOW_TRIGGER, 300",
    "output external,     300, MAINS, WINDOW_TRIGGER, 300"
  })
  void surestWayIsChosenForARestoration(
      String wired, double checkSeconds, Follows follows, CatchMethod expected, double waits) {
    EventSignal signal = new EventSignal(follows, 0, 5, true, 0.03);
    CapturePlan plan =
        CapturePlanner.plan(wired(Event.RESTORATION, wired, checkSeconds, signal), LIMITS);
    assertEquals(expected, plan.method());
    assertEquals(waits, plan.unitWaitSeconds());
    double after = plan.durationSeconds() - plan.preTriggerSeconds();
    assertTrue(after >= (waits > 0 ? 0.3 : checkSeconds + 0.3), "found " + after);
  }

  @Test
  void edgeOfMainsThatIsBackRises() {
    PlannedTrigger trigger =
        CapturePlanner.plan(wired(Event.RESTORATION, "output mains", 2, MAINS_PRESENT), LIMITS)
            .trigger();
    assertNotNull(trigger);
    assertEquals(ChannelRole.MAINS, trigger.source());
    assertEquals(Slope.RISING, trigger.slope());
    assertEquals(0.3 * 325.27, trigger.levelVolts(), 0.01);
  }

  @Test
  void markerFallsWithTheLossAndItsDelayOnlyLengthensTheRecord() {
    CapturePlan plan =
        CapturePlanner.plan(wired(Event.LOSS, "output marker", 300, MAINS_PRESENT), LIMITS);
    PlannedTrigger trigger = plan.trigger();
    assertNotNull(trigger);
    assertEquals(ChannelRole.MARKER, trigger.source());
    assertEquals(Slope.FALLING, trigger.slope());
    assertEquals(2.5, trigger.levelVolts());
    assertTrue(plan.preTriggerSeconds() >= 0.03 + 0.2);
    assertEquals(7.5, plan.channel(ChannelRole.MARKER).fullScalePeakVolts());
  }

  @Test
  void externalInputHasNoChannel() {
    PlannedTrigger trigger =
        CapturePlanner.plan(wired(Event.LOSS, "output external", 300, MAINS_PRESENT), LIMITS)
            .trigger();
    assertNotNull(trigger);
    assertNull(trigger.source());
  }

  @Test
  void gapOfTheDeclaredTimeThatCanBeMissedIsWarnedOf() {
    CapturePlan plan =
        CapturePlanner.plan(
            new CaptureRequest(
                Event.LOSS, 230, 50, 0.01, OUTPUT, true, CatchMethod.TIME_OUT_TRIGGER),
            LIMITS);
    String said = String.join(" ", plan.explanation());
    Blindness blindness = plan.blindness();
    assertEquals(0.01294, blindness.sureFromSeconds(), 1e-5);
    assertEquals(0.001, blindness.neverUnderSeconds(), 1e-6);
    assertTrue(
        said.contains("Blind zone: a gap of 12.94 ms or more always trips it, and one under 1 ms"),
        said);
    assertTrue(
        said.contains(
            "Beware: a gap of the declared 10 ms can be missed, at "
                + Math.round(100 * blindness.missedAtRatedPart())
                + " % of the points on wave"),
        said);
    assertTrue(said.contains("a load with capacitors"), said);
  }

  @Test
  void triggerThatFiresOnlyAtTheEndIsRefused() {
    assertEquals(
        "this instrument has no pulse-width trigger that fires by itself in its profile: catch the"
            + " loss by a forced record",
        refusal(
            loss(230, 50, OUTPUT, CatchMethod.PULSE_WIDTH_TRIGGER),
            limits(2_000_000, EnumSet.of(CatchMethod.FORCED_RECORD))));
  }

  @Test
  void edgeWithoutASignalIsRefused() {
    assertTrue(
        refusal(loss(230, 50, BOTH_SIDES, CatchMethod.EDGE_TRIGGER), LIMITS)
            .startsWith(
                "an edge trigger needs a signal that changes once, with the loss, and the rig has"
                    + " none at a marker channel: connect an isolated mains-present signal"));
  }

  @Test
  void forcedRecordOfMinutesIsRefusedWithAWayOut() {
    CaptureRequest request =
        new CaptureRequest(
            Event.RESTORATION, 230, 50, 0.02, OUTPUT, true, CatchMethod.FORCED_RECORD);
    assertEquals(
        "a record of 500 s needs 5000000 samples at 10 kS/s, but the instrument holds 2000000 samples"
            + " of at most 10 ms each: use an instrument with more memory, or say how long the unit"
            + " checks the mains, if less than the 300 s that are allowed for, or catch the"
            + " restoration by a trigger on the output",
        refusal(request, LIMITS));
  }

  @Test
  void recordsBackToBackTellTheirBlindTime() {
    CapturePlan plan =
        CapturePlanner.plan(
            loss(230, 50, OUTPUT, CatchMethod.BACK_TO_BACK_RECORDS), limits(20_000, BOTH));
    assertEquals(2, plan.durationSeconds(), 1e-9); // 20,000 samples at 10 kS/s
    // 0.22 s before and 0.44 s after the event, of 2 s
    assertEquals(0.33, plan.blindness().blindTimePart(), 0.005);
    assertTrue(plan.explanation().get(0).contains("blind for at least 33 % of the time"));
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

  private static CaptureRequest wired(
      Event event, String wired, double checkSeconds, EventSignal signal) {
    List<String> words = List.of(wired.split(" "));
    Map<ChannelRole, Input> inputs = new EnumMap<>(ChannelRole.class);
    inputs.put(ChannelRole.OUTPUT, Input.ofSupply(1, 100));
    if (words.contains("mains")) {
      inputs.put(ChannelRole.MAINS, Input.ofSupply(2, 100));
    }
    boolean marked = words.contains("marker");
    if (marked) {
      inputs.put(ChannelRole.MARKER, Input.ofSupply(3, 1));
    }
    return new CaptureRequest(
        event,
        230,
        50,
        0.02,
        inputs,
        true,
        null,
        marked ? signal : null,
        words.contains("external") ? signal : null,
        checkSeconds);
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
