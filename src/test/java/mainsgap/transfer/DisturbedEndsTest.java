package mainsgap.transfer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.util.function.DoubleUnaryOperator;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.Event;
import mainsgap.signal.TimeAxis;
import mainsgap.transfer.bank.Kind;
import mainsgap.transfer.bank.KnownCapture;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Refused;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Supplies that are disturbed within a cycle of a gap; mains of 230 V and 50 Hz. */
class DisturbedEndsTest {
  private static final MeasuringTask TASK = new MeasuringTask(Event.LOSS, 230, 50);
  private static final double LOSS_SECONDS = 0.1644;
  private static final double NOISE_VOLTS = 4;

  private static Outcome outcome(DoubleUnaryOperator output) {
    SketchedCapture sketch = new SketchedCapture(new TimeAxis(0, 5e-5, 8_000, 0));
    sketch.with(ChannelRole.OUTPUT, NOISE_VOLTS, output);
    return TransferMeasurement.measure(sketch.capture(), TASK);
  }

  private static void assertGap(double millis, Outcome outcome) {
    Measured gap = assertInstanceOf(Measured.class, outcome, outcome.sentence());
    assertEquals(millis, gap.transferMillis(), gap.uncertaintyMillis(), outcome.sentence());
    assertEquals(millis, gap.transferMillis(), 0.1, outcome.sentence());
  }

  private static double mains(double seconds, double height, double radians) {
    return height * SketchedCapture.PEAK_VOLTS * Math.sin(2 * Math.PI * 50 * seconds + radians);
  }

  private static double inverter(double seconds, double height, double radians) {
    return height
        * SketchedCapture.PEAK_VOLTS
        * Math.sin(2 * Math.PI * 50.05 * seconds + 0.8 + radians);
  }

  private static DoubleUnaryOperator gap(double millis, DoubleUnaryOperator before) {
    double back = LOSS_SECONDS + 1e-3 * millis;
    return seconds -> {
      if (seconds < LOSS_SECONDS) {
        return before.applyAsDouble(seconds);
      }
      return seconds < back ? 0 : inverter(seconds, 1, 0);
    };
  }

  @ParameterizedTest
  @CsvSource({"12.8, 6", "4.1, 18", "16, 2", "20.4, 9"})
  void aSpikeShortlyBeforeTheLossIsNotTheLoss(double millisBefore, double gapMillis) {
    double spiked = LOSS_SECONDS - 1e-3 * millisBefore;
    assertGap(
        gapMillis,
        outcome(
            gap(
                gapMillis,
                seconds ->
                    mains(seconds, 1, 0) + 250 * Math.exp(-Math.abs(seconds - spiked) / 2e-4))));
  }

  @ParameterizedTest
  @CsvSource({
    "15.4, 1, 0.2, 2",
    "6.2, 1, 0.5, 2",
    "5.8, 1, -0.5, 75",
    "22.6, 1, -0.2, 13",
    "7.6, 1.05, 0, 13",
    "5.6, 1.1, 0, 3",
    "13.2, 0.9, 0, 13",
    "10.8, 0.8, 0, 4"
  })
  void aStepOfMainsShortlyBeforeTheLossIsNotTheLoss(
      double millisBefore, double height, double radians, double gapMillis) {
    double stepped = LOSS_SECONDS - 1e-3 * millisBefore;
    assertGap(
        gapMillis,
        outcome(
            gap(
                gapMillis,
                seconds ->
                    seconds < stepped ? mains(seconds, 1, 0) : mains(seconds, height, radians))));
  }

  /** From more than a cycle away it would be a gap of its own, and the gap an interruption more. */
  @ParameterizedTest
  @CsvSource({"24, 1.1, 0.25, 9", "28, 0.9, -0.3, 30", "33, 1.12, 0.2, 14", "36, 0.88, -0.25, 40"})
  void aStepOfVoltageAndAngleIsNoGap(
      double millisBefore, double height, double radians, double gapMillis) {
    double stepped = LOSS_SECONDS - 1e-3 * millisBefore;
    Outcome outcome =
        outcome(
            gap(
                gapMillis,
                seconds ->
                    seconds < stepped ? mains(seconds, 1, 0) : mains(seconds, height, radians)));
    assertGap(gapMillis, outcome);
    Measured gap = assertInstanceOf(Measured.class, outcome);
    assertEquals(0, gap.furtherInterruptions().count(), outcome.sentence());
  }

  /** It holds the voltage about zero for a while; what a load keeps has the sign of its supply. */
  @ParameterizedTest
  @CsvSource({"14.6, 140, 0.4, 9", "15, 190, 0.3, 4", "4.6, -150, 0.35, 30"})
  void aSurgeAcrossZeroIsNoOpening(
      double millisBefore, double volts, double decayMillis, double gapMillis) {
    double surged = LOSS_SECONDS - 1e-3 * millisBefore;
    assertGap(
        gapMillis,
        outcome(
            gap(
                gapMillis,
                seconds -> {
                  double since = 1e3 * (seconds - surged);
                  double surge = since < 0 ? 0 : volts * Math.exp(-since / decayMillis);
                  return mains(seconds, 1, 0) + surge;
                })));
  }

  @ParameterizedTest
  @CsvSource({"7.4, 1.1, 0, 9", "15, 1.15, 0, 9", "8, 1, 0.3, 3", "17, 1, -0.4, 30"})
  void aStepOfTheOutputSoonAfterItsReturnIsNotTheReturn(
      double millisAfter, double height, double radians, double gapMillis) {
    double back = LOSS_SECONDS + 1e-3 * gapMillis;
    double stepped = back + 1e-3 * millisAfter;
    assertGap(
        gapMillis,
        outcome(
            seconds -> {
              if (seconds < LOSS_SECONDS) {
                return mains(seconds, 1, 0);
              }
              if (seconds < back) {
                return 0;
              }
              return seconds < stepped
                  ? inverter(seconds, 1, 0)
                  : inverter(seconds, height, radians);
            }));
  }

  @ParameterizedTest
  @CsvSource({"12, 60, 40", "30, 45, 10", "13, 30, 5"})
  void anOutputThatFailsWithinAFewCyclesHasReturned(
      double gapMillis, double fedMillis, double againMillis) {
    double back = LOSS_SECONDS + 1e-3 * gapMillis;
    double failed = back + 1e-3 * fedMillis;
    double again = failed + 1e-3 * againMillis;
    Outcome outcome =
        outcome(
            seconds -> {
              boolean isMains = seconds < LOSS_SECONDS || seconds >= again;
              boolean isFed = seconds >= back && seconds < failed;
              double inverter = isFed ? inverter(seconds, 1, 0) : 0;
              return isMains ? mains(seconds, 1, 0) : inverter;
            });
    assertGap(gapMillis, outcome);
    Measured gap = assertInstanceOf(Measured.class, outcome);
    assertEquals(1, gap.furtherInterruptions().count(), outcome.sentence());
    Double longest = gap.furtherInterruptions().longestMillis();
    assertEquals(againMillis, longest == null ? 0 : longest, 1.5);
  }

  /** A contact that bounces has opened for the first time before. */
  @Test
  void anOpeningThatTheLoadIsDeadInIsNoDisturbance() {
    double opened = LOSS_SECONDS - 6e-3;
    Outcome outcome =
        outcome(
            gap(
                9,
                seconds ->
                    seconds >= opened && seconds < opened + 1e-3 ? 0 : mains(seconds, 1, 0)));
    assertGap(15, outcome);
  }

  /** Its gaps are no answer to a loss of mains that comes later. */
  @Test
  void aGapBeforeMainsIsLostIsNotMeasured() {
    SketchedCapture sketch = new SketchedCapture(new TimeAxis(0, 5e-5, 8_000, 0));
    sketch.with(
        ChannelRole.OUTPUT,
        NOISE_VOLTS,
        seconds ->
            seconds >= LOSS_SECONDS && seconds < LOSS_SECONDS + 9e-3 ? 0 : mains(seconds, 1, 0));
    sketch.with(
        ChannelRole.MAINS, NOISE_VOLTS, seconds -> seconds < 0.28 ? mains(seconds, 1, 0) : 0);
    Outcome outcome = TransferMeasurement.measure(sketch.capture(), TASK);
    assertInstanceOf(Refused.class, outcome, outcome.sentence());
  }

  @ParameterizedTest
  @CsvSource({
    "STEP_JUST_BEFORE, 5", "STEP_JUST_BEFORE, 167", "STEP_JUST_BEFORE, 206",
    "STEP_JUST_BEFORE, 22", "STEP_JUST_BEFORE, 740", "STEP_JUST_BEFORE, 839",
    "SURGE_JUST_BEFORE, 228", "SURGE_JUST_BEFORE, 515", "SURGE_JUST_BEFORE, 828",
    "OUTPUT_STEPS_SOON, 28", "OUTPUT_STEPS_SOON, 57", "OUTPUT_STEPS_SOON, 176",
    "OUTPUT_STEPS_SOON, 274", "NOTCHED, 157", "NOTCHED, 434",
    "STEPS_AT_BOTH_ENDS, 1", "STEPS_AT_BOTH_ENDS, 79", "STEPS_AT_BOTH_ENDS, 131",
    "STEPS_AT_BOTH_ENDS, 171", "STEPS_AT_BOTH_ENDS, 197", "STEPS_AT_BOTH_ENDS, 403",
    "STEPS_AT_BOTH_ENDS, 586", "STEPS_AT_BOTH_ENDS, 669", "STEPS_AT_BOTH_ENDS, 816"
  })
  void capturesOfTheBankThatWereMillisecondsOff(Kind kind, long seed) {
    Measured gap = assertTransferTime(kind.capture(seed), 0.1);
    assertEquals(0, gap.furtherInterruptions().count(), gap.sentence());
  }

  /** A supply that is fitted across its notches is some volts off, which is much at a crossing. */
  @ParameterizedTest
  @CsvSource({"29", "103", "122", "197", "272", "284"})
  void notchesDoNotMoveAnInstantNearACrossing(long seed) {
    assertTransferTime(Kind.NOTCHED.capture(seed), 0.015);
  }

  /** It takes some volts away up to the next crossing, where the load comes to lie still. */
  @ParameterizedTest
  @CsvSource({"506", "510", "526", "679", "721", "943"})
  void anArcIsNoOtherSupply(long seed) {
    assertTransferTime(Kind.ARC.capture(seed), 0.05);
  }

  private static Measured assertTransferTime(KnownCapture known, double withinMillis) {
    Outcome outcome = TransferMeasurement.measure(known.capture(), known.task());
    Measured gap = assertInstanceOf(Measured.class, outcome, outcome.sentence());
    assertEquals(
        known.truth().transferMillis(), gap.transferMillis(), withinMillis, outcome.sentence());
    return gap;
  }
}
