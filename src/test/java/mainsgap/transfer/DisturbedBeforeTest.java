package mainsgap.transfer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.EnumMap;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.CodeFormat;
import mainsgap.signal.Event;
import mainsgap.signal.Scale;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.Waveform;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Refused;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Mains of 230 V and 50 Hz is disturbed shortly before it is lost at 251.5 ms for 10.7 ms; the
 * output comes back in another phase.
 */
class DisturbedBeforeTest {
  private static final TimeAxis TIME = new TimeAxis(0, 1e-5, 50_000, 0);
  private static final MeasuringTask TASK = new MeasuringTask(Event.LOSS, 230, 50);
  private static final double PEAK = 230 * Math.sqrt(2);
  private static final double LOSS_SECONDS = 0.2515;
  private static final double GAP_SECONDS = 10.7e-3;

  private static double mainsVolts(double seconds) {
    return PEAK * Math.sin(2 * Math.PI * 50 * seconds);
  }

  /** The output, with {@code before} up to the loss. */
  private static DoubleUnaryOperator lost(DoubleUnaryOperator before) {
    return seconds ->
        seconds < LOSS_SECONDS
            ? before.applyAsDouble(seconds)
            : seconds < LOSS_SECONDS + GAP_SECONDS
                ? 0
                : PEAK * Math.sin(2 * Math.PI * 50 * seconds + 1);
  }

  private static boolean isWithin(double seconds, double from, double length) {
    return seconds >= from && seconds < from + length;
  }

  private static Waveform sampled(DoubleUnaryOperator signal) {
    SplittableRandom dice = new SplittableRandom(7);
    ByteBuffer block = ByteBuffer.allocate(TIME.length() * 8).order(ByteOrder.LITTLE_ENDIAN);
    for (int i = 0; i < TIME.length(); i++) {
      block.putDouble(signal.applyAsDouble(TIME.secondsAt(i)) + dice.nextGaussian());
    }
    return new Waveform(block.array(), CodeFormat.REAL_64_LSB_FIRST, Scale.VOLTS);
  }

  private static Outcome outcome(DoubleUnaryOperator output) {
    return TransferMeasurement.measure(Capture.ofOutput(TIME, sampled(output)), TASK);
  }

  private static Outcome outcome(DoubleUnaryOperator output, DoubleUnaryOperator mains) {
    Map<ChannelRole, Waveform> channels = new EnumMap<>(ChannelRole.class);
    channels.put(ChannelRole.OUTPUT, sampled(output));
    channels.put(ChannelRole.MAINS, sampled(mains));
    return TransferMeasurement.measure(new Capture(TIME, channels), TASK);
  }

  private static void assertWholeGap(Outcome outcome) {
    Measured found = assertInstanceOf(Measured.class, outcome);
    assertEquals(1e3 * GAP_SECONDS, found.transferMillis(), 0.05);
    assertEquals(LOSS_SECONDS, found.lossSeconds(), 50e-6);
    assertEquals(found.lossSeconds(), found.lastOpeningSeconds());
  }

  @ParameterizedTest
  @CsvSource({
    "60, 500, 3",
    "60, 200, 8",
    "-60, 500, 18",
    "-60, 500, 100",
    "150, 50, 13",
    "150, 200, 30",
    "-150, 500, 22",
    "300, 50, 8",
    "300, 500, 13",
    "-300, 200, 3"
  })
  void aPulseOnTheSupplyBeforeDoesNotMoveTheLoss(double volts, double micros, double leadMillis) {
    double from = LOSS_SECONDS - leadMillis / 1e3;
    assertWholeGap(
        outcome(lost(t -> mainsVolts(t) + (isWithin(t, from, micros / 1e6) ? volts : 0))));
  }

  @Test
  void aBurstOfNoiseDoesNotMoveTheLoss() {
    SplittableRandom dice = new SplittableRandom(3);
    double from = LOSS_SECONDS - 30e-3;
    assertWholeGap(
        outcome(
            lost(t -> mainsVolts(t) + (isWithin(t, from, 1e-3) ? 40 * dice.nextGaussian() : 0))));
  }

  @ParameterizedTest
  @CsvSource({"12, 12, 0.75", "25, 12, 0.6", "16, 16, 0.85"})
  void aSagEndsWhereTheLossBegins(double leadMillis, double millis, double share) {
    double from = LOSS_SECONDS - leadMillis / 1e3;
    assertWholeGap(
        outcome(lost(t -> mainsVolts(t) * (isWithin(t, from, millis / 1e3) ? share : 1))));
  }

  /** It lies low, as a dead load does, but not where the load lies once it is dead. */
  @ParameterizedTest
  @CsvSource({"-210, 200, 3.2", "-190, 60, 2.7", "-215, 300, 4.2"})
  void aPulseThatAllButTakesTheVoltageAwayIsNoBounce(
      double volts, double micros, double leadMillis) {
    double from = LOSS_SECONDS - leadMillis / 1e3;
    assertWholeGap(
        outcome(lost(t -> mainsVolts(t) + (isWithin(t, from, micros / 1e6) ? volts : 0))));
  }

  @ParameterizedTest
  @CsvSource({"0.35, 13.5", "0.25, 7", "0.45, 37"})
  void aNotchWellBeforeTheLossIsNoBounce(double millis, double leadMillis) {
    double from = LOSS_SECONDS - leadMillis / 1e3;
    assertWholeGap(outcome(lost(t -> isWithin(t, from, millis / 1e3) ? 0 : mainsVolts(t))));
  }

  /** The cycle after it differs from it, and seems to be where the supply is left. */
  @ParameterizedTest
  @CsvSource({"29.2, 0.16", "35.2, 0.18", "30, 0.5"})
  void aRingThatDiesDownDoesNotMoveTheLossNorTheReturn(double leadMillis, double share) {
    double from = LOSS_SECONDS - leadMillis / 1e3;
    assertWholeGap(
        outcome(
            lost(
                t ->
                    mainsVolts(t)
                        - (t < from
                            ? 0
                            : share
                                * PEAK
                                * Math.exp((from - t) / 0.5e-3)
                                * Math.sin(2 * Math.PI * 620 * (t - from))))));
  }

  @Test
  void aDeadLoadSomeMillisecondsBeforeTheLossIsABounceOfTheSwitch() {
    double from = LOSS_SECONDS - 3e-3;
    Measured found =
        assertInstanceOf(
            Measured.class, outcome(lost(t -> isWithin(t, from, 0.8e-3) ? 0 : mainsVolts(t))));
    assertEquals(from, found.lossSeconds(), 50e-6);
    assertEquals(LOSS_SECONDS, found.lastOpeningSeconds(), 50e-6);
  }

  @Test
  void anInterruptionWellBeforeMainsIsLostIsNoAnswerToThatLoss() {
    double from = LOSS_SECONDS - 95e-3;
    Measured found =
        assertInstanceOf(
            Measured.class,
            outcome(
                lost(t -> isWithin(t, from, 4e-3) ? 0 : mainsVolts(t)),
                t -> t < LOSS_SECONDS ? mainsVolts(t) : 0));
    assertEquals(1e3 * GAP_SECONDS, found.transferMillis(), 0.05);
  }

  @Test
  void anInterruptionBeforeMainsIsLostAndNoneThenIsRefused() {
    double from = LOSS_SECONDS - 95e-3;
    Refused refused =
        assertInstanceOf(
            Refused.class,
            outcome(
                t -> isWithin(t, from, 4e-3) ? 0 : mainsVolts(t),
                t -> t < LOSS_SECONDS ? mainsVolts(t) : 0));
    assertTrue(
        refused.reason().startsWith("the output is interrupted for 4.0 ms at 156.5 ms"),
        refused.reason());
  }

  @Test
  void aSpikeOnTheMainsChannelDoesNotMoveItsLoss() {
    double from = LOSS_SECONDS - 10e-3;
    DoubleUnaryOperator spiked = t -> mainsVolts(t) + (isWithin(t, from, 100e-6) ? 200 : 0);
    Measured found =
        assertInstanceOf(
            Measured.class,
            outcome(
                lost(DisturbedBeforeTest::mainsVolts),
                t -> t < LOSS_SECONDS ? spiked.applyAsDouble(t) : 0));
    Double held = found.others().holdThroughMillis();
    assertEquals(0, held == null ? Double.NaN : held, 0.1);
  }

  /** A pulse each 4.7 ms from the third cycle on. */
  @Test
  void moreDisturbancesThanAreLookedAtAreRefusedAndNotTakenForAnEnd() {
    Waveform output =
        sampled(
            lost(
                seconds ->
                    mainsVolts(seconds) + (seconds > 0.05 && seconds % 4.7e-3 < 0.2e-3 ? 120 : 0)));
    Refused refused =
        assertInstanceOf(
            Refused.class, TransferMeasurement.measure(Capture.ofOutput(TIME, output), TASK));
    assertTrue(refused.reason().startsWith("the output is disturbed more than 40 times"));
  }
}
