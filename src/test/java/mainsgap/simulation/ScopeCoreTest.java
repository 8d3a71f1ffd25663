package mainsgap.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import mainsgap.simulation.ScopeCore.Stage;
import mainsgap.waiting.ManualClock;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** The acquisition and its triggers, on a clock that the test turns. */
class ScopeCoreTest {
  private static final double LEVEL_VOLTS = 98;
  private static final double WIDTH_SECONDS = 0.013;

  private final ManualClock clock = new ManualClock();

  private static SimulatedBenchSettings settings(SimulatedUnit unit) {
    return SimulatedBenchSettings.of(unit, 7);
  }

  private static RecordPlan plan(double first, double seconds, @Nullable Trigger trigger) {
    List<VoltageRange> ranges =
        Collections.nCopies(ScopeRecord.CHANNELS, VoltageRange.atTip(0, 1200));
    return new RecordPlan(first, 1e-5, (int) Math.round(seconds / 1e-5), trigger, ranges);
  }

  private static RecordPlan fine(Trigger trigger) {
    List<VoltageRange> ranges =
        Collections.nCopies(ScopeRecord.CHANNELS, VoltageRange.atTip(0, 15));
    return new RecordPlan(-0.05, 1e-5, 20_000, trigger, ranges);
  }

  private static RecordPlan timeOutPlan(int channel) {
    return plan(-0.05, 0.2, new Trigger.TimeOut(channel, LEVEL_VOLTS, WIDTH_SECONDS));
  }

  private void arm(ScopeCore core, RecordPlan plan) {
    core.arm(plan, ScopeFault.NONE);
    if (plan.trigger() != null) {
      assertEquals(Stage.FILLING, core.stage());
      clock.advance(Duration.ofMillis(5));
    }
  }

  @Test
  void timeOutFiresOnceTheQuietHasLastedItsTimeAndNotBefore() {
    Voltage quietAfterTwenty = at -> at < 0.02 ? 325 * Math.sin(2 * Math.PI * 50 * at) : 0;
    Trigger trigger = new Trigger.TimeOut(1, LEVEL_VOLTS, WIDTH_SECONDS);
    // the last crossing: asin(98/325) before the half cycle from 0 to 10 ms ends
    double lastCrossing = 0.01 - Math.asin(LEVEL_VOLTS / 325) / (2 * Math.PI * 50);
    double fires = lastCrossing + WIDTH_SECONDS;
    assertEquals(OptionalDouble.empty(), trigger.firesAt(quietAfterTwenty, 0, fires - 2e-5, 1e-6));
    assertEquals(fires, trigger.firesAt(quietAfterTwenty, 0, 0.1, 1e-6).orElseThrow(), 3e-6);
  }

  @Test
  void timeOutStaysStillOnASineThatCrossesItsLevel() {
    Voltage sine = at -> 325 * Math.sin(2 * Math.PI * 50 * at);
    // (180 + 2 asin(98/325))/360 of a cycle is 11.95 ms
    assertTrue(new Trigger.TimeOut(1, LEVEL_VOLTS, 0.0121).firesAt(sine, 0, 1, 1e-5).isEmpty());
    assertTrue(new Trigger.TimeOut(1, LEVEL_VOLTS, 0.0118).firesAt(sine, 0, 1, 1e-5).isPresent());
  }

  @Test
  void edgeFiresWhereTheSignalRisesThroughItsLevel() {
    Voltage sine = at -> 325 * Math.sin(2 * Math.PI * 50 * at);
    Trigger edge = new Trigger.Edge(1, 325 / 2.0, true);
    assertEquals(0.02 / 12, edge.firesAt(sine, 0, 1, 1e-6).orElseThrow(), 2e-6);
    assertTrue(new Trigger.Edge(1, 400, true).firesAt(sine, 0, 1, 1e-5).isEmpty());
  }

  @Test
  void watchOfTheMainsCatchesEveryOpening() {
    PowerSide power = new PowerSide(settings(SimulatedUnit.STANDBY));
    ScopeCore core = new ScopeCore(power, clock, settings(SimulatedUnit.STANDBY));
    for (int number = 1; number <= 20; number++) {
      arm(core, timeOutPlan(2));
      assertEquals(Stage.WATCHING, core.stage());
      power.openMains();
      assertEquals(Stage.RECORDING, core.stage());
      clock.advance(Duration.ofMillis(15));
      assertEquals(Stage.COMPLETE, core.stage());
      double loss = power.truth(TrialTruth.Change.OPENING, number).orElseThrow().lossSeconds();
      assertTrue(loss > -0.05 && loss < 0, "the loss is before the trigger, at " + loss);
      power.closeMains();
    }
  }

  @Test
  void shortGapOfTheOutputLeavesABlindZone() {
    SimulatedBenchSettings settings = settings(SimulatedUnit.LINE_INTERACTIVE);
    PowerSide power = new PowerSide(settings);
    ScopeCore core = new ScopeCore(power, clock, settings);
    int missed = 0;
    for (int number = 1; number <= 20; number++) {
      arm(core, timeOutPlan(1));
      assertEquals(Stage.WATCHING, core.stage());
      power.openMains();
      missed += core.stage() == Stage.WATCHING ? 1 : 0;
      power.closeMains();
      core.stop();
    }
    assertTrue(missed > 0, "a gap of 3 ms hides between two crossings");
  }

  @Test
  void smallSignalsMoveWithTheirEvent() {
    SimulatedBenchSettings settings = settings(SimulatedUnit.STANDBY);
    PowerSide power = new PowerSide(settings);
    ScopeCore core = new ScopeCore(power, clock, settings);
    for (int channel : new int[] {3, 4, ScopeRecord.EXTERNAL}) {
      arm(core, fine(new Trigger.Edge(channel, 2.5, false)));
      assertEquals(Stage.WATCHING, core.stage());
      power.openMains();
      assertEquals(Stage.RECORDING, core.stage(), "channel " + channel + " at the loss");
      arm(core, fine(new Trigger.Edge(channel, 2.5, true)));
      assertEquals(Stage.WATCHING, core.stage());
      power.closeMains();
      assertEquals(Stage.RECORDING, core.stage(), "channel " + channel + " at the restoration");
    }
  }

  /** Back to back: the event is in the record that runs, and in none if it falls between two. */
  @Test
  void openingBetweenTwoRecordsIsInNeither() {
    SimulatedBenchSettings settings = settings(SimulatedUnit.STANDBY);
    PowerSide power = new PowerSide(settings);
    ScopeCore core = new ScopeCore(power, clock, settings);
    arm(core, plan(0, 2, null));
    clock.advance(Duration.ofMillis(300));
    assertEquals(Stage.COMPLETE, core.stage());
    power.openMains();
    arm(core, plan(0, 2, null));
    clock.advance(Duration.ofMillis(300));
    assertEquals(Stage.COMPLETE, core.stage());
    assertTrue(power.truth(TrialTruth.Change.OPENING, 1).isEmpty());
    power.closeMains();
    arm(core, plan(0, 2, null));
    power.openMains();
    assertTrue(power.truth(TrialTruth.Change.OPENING, 2).isPresent());
  }

  @Test
  void levelOutOfReachTimesOutOnAHealthyOutput() {
    SimulatedBenchSettings settings = settings(SimulatedUnit.STANDBY);
    ScopeCore core = new ScopeCore(new PowerSide(settings), clock, settings);
    arm(core, plan(-0.05, 0.2, new Trigger.TimeOut(1, 500, WIDTH_SECONDS)));
    assertEquals(Stage.RECORDING, core.stage());
  }

  @Test
  void forcedRecordHoldsTheOpeningWhereTheSeedPutsIt() {
    SimulatedBenchSettings settings = settings(SimulatedUnit.STANDBY);
    PowerSide power = new PowerSide(settings);
    ScopeCore core = new ScopeCore(power, clock, settings);
    arm(core, plan(0, 10, null));
    assertEquals(Stage.RECORDING, core.stage());
    clock.advance(Duration.ofMillis(300));
    power.openMains();
    clock.advance(Duration.ofMillis(30));
    assertEquals(Stage.COMPLETE, core.stage());
    double loss = power.lastTruth().orElseThrow().lossSeconds();
    assertTrue(loss > 2.5 && loss < 6.1, "loss at " + loss);

    PowerSide again = new PowerSide(settings);
    ScopeCore late = new ScopeCore(again, clock, settings);
    arm(late, plan(0, 10, null));
    clock.advance(Duration.ofMillis(900));
    again.openMains();
    assertEquals(loss, again.lastTruth().orElseThrow().lossSeconds());
  }

  @Test
  void forcedRecordWithoutAnOpeningEndsWithMainsAllThrough() {
    SimulatedBenchSettings settings = settings(SimulatedUnit.STANDBY);
    PowerSide power = new PowerSide(settings);
    ScopeCore core = new ScopeCore(power, clock, settings);
    arm(core, plan(0, 2, null));
    clock.advance(Duration.ofMillis(199));
    assertEquals(Stage.RECORDING, core.stage());
    clock.advance(Duration.ofMillis(2));
    assertEquals(Stage.COMPLETE, core.stage());
    assertTrue(power.lastTruth().isEmpty());
  }

  @Test
  void secondMovementLeavesTheRecordAsItIs() {
    SimulatedBenchSettings settings = settings(SimulatedUnit.STANDBY);
    PowerSide power = new PowerSide(settings);
    ScopeCore core = new ScopeCore(power, clock, settings);
    arm(core, plan(0, 10, null));
    power.openMains();
    power.closeMains();
    clock.advance(Duration.ofMillis(30));
    assertEquals(Stage.COMPLETE, core.stage());
    assertTrue(power.truth(TrialTruth.Change.OPENING, 1).isPresent());
    assertTrue(power.truth(TrialTruth.Change.CLOSING, 1).isEmpty());
  }

  @Test
  void restorationIsCaughtInAForcedRecord() {
    SimulatedBenchSettings settings = settings(SimulatedUnit.STANDBY);
    PowerSide power = new PowerSide(settings);
    ScopeCore core = new ScopeCore(power, clock, settings);
    power.openMains();
    arm(core, plan(0, 10, null));
    power.closeMains();
    double loss = power.truth(TrialTruth.Change.CLOSING, 1).orElseThrow().lossSeconds();
    assertTrue(loss > 1.7 && loss < 3.3, "the inverter is left at " + loss);
  }

  @Test
  void autonomousBenchOpensSomeTimeAfterArmingAndClosesOnceTheRecordIsWhole() {
    SimulatedBenchSettings settings = settings(SimulatedUnit.STANDBY).withAutonomousMains();
    PowerSide power = new PowerSide(settings);
    ScopeCore core = new ScopeCore(power, clock, settings);
    arm(core, plan(0, 10, null));
    clock.advance(Duration.ofMillis(100));
    assertEquals(Stage.RECORDING, core.stage());
    assertTrue(power.isMainsClosed());
    clock.advance(Duration.ofMillis(100));
    assertEquals(Stage.RECORDING, core.stage());
    assertTrue(!power.isMainsClosed());
    clock.advance(Duration.ofMillis(50));
    assertEquals(Stage.COMPLETE, core.stage());
    assertTrue(power.isMainsClosed());
    assertTrue(power.truth(TrialTruth.Change.OPENING, 1).isPresent());
  }

  @Test
  void autonomousBenchLeavesALookAlone() {
    SimulatedBenchSettings settings = settings(SimulatedUnit.STANDBY).withAutonomousMains();
    PowerSide power = new PowerSide(settings);
    ScopeCore core = new ScopeCore(power, clock, settings);
    arm(core, plan(0, 0.2, null));
    clock.advance(Duration.ofSeconds(3));
    assertEquals(Stage.COMPLETE, core.stage());
    assertTrue(power.isMainsClosed());
  }

  @Test
  void codesStopAtTheRailsAndNowhereElse() {
    SimulatedBenchSettings settings = settings(SimulatedUnit.STANDBY);
    PowerSide power = new PowerSide(settings);
    ScopeCore core = new ScopeCore(power, clock, settings);
    List<VoltageRange> ranges =
        List.of(
            VoltageRange.atTip(0, 400),
            VoltageRange.atTip(0, 1200),
            VoltageRange.atTip(0, 1),
            VoltageRange.atTip(0, 1));
    core.arm(new RecordPlan(0, 1e-5, 4000, null, ranges), ScopeFault.NONE);
    clock.advance(Duration.ofMillis(10));
    ScopeRecord record = core.record().orElseThrow();
    assertEquals(0, lowest(record.codes(1)));
    assertEquals(4095, highest(record.codes(1)));
    assertTrue(lowest(record.codes(2)) > 800 && highest(record.codes(2)) < 3300);
  }

  private static int lowest(short[] codes) {
    int lowest = Integer.MAX_VALUE;
    for (short code : codes) {
      lowest = Math.min(lowest, code);
    }
    return lowest;
  }

  private static int highest(short[] codes) {
    int highest = 0;
    for (short code : codes) {
      highest = Math.max(highest, code);
    }
    return highest;
  }

  @Test
  void noiseHasUnitDeviationAndNoMean() {
    double sum = 0;
    double squares = 0;
    int count = 200_000;
    for (int i = 0; i < count; i++) {
      double noise = Noise.at(42, i);
      sum += noise;
      squares += noise * noise;
    }
    // five standard errors of the mean and of the variance of a normal sample
    assertEquals(0, sum / count, 5 / Math.sqrt(count));
    assertEquals(1, squares / count, 5 * Math.sqrt(2.0 / count));
  }
}
