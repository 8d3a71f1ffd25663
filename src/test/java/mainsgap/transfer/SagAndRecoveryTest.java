package mainsgap.transfer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import mainsgap.signal.Capture;
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

/** 230 V at 50 Hz that is a share of itself for a while: what is a gap, and when it is over. */
class SagAndRecoveryTest {
  private static final TimeAxis TIME = new TimeAxis(0, 1e-5, 80_000, 0);
  private static final double LOSS_SECONDS = 0.1533;
  private static final double CYCLE_MILLIS = 20;

  private static Outcome of(DoubleUnaryOperator shareAt) {
    SplittableRandom dice = new SplittableRandom(7);
    ByteBuffer block = ByteBuffer.allocate(TIME.length() * 8).order(ByteOrder.LITTLE_ENDIAN);
    for (int i = 0; i < TIME.length(); i++) {
      double seconds = TIME.secondsAt(i);
      double volts = 230 * Math.sqrt(2) * Math.sin(2 * Math.PI * 50 * seconds);
      block.putDouble(shareAt.applyAsDouble(seconds) * volts + dice.nextDouble() - 0.5);
    }
    Waveform output = new Waveform(block.array(), CodeFormat.REAL_64_LSB_FIRST, Scale.VOLTS);
    return TransferMeasurement.measure(
        Capture.ofOutput(TIME, output), new MeasuringTask(Event.LOSS, 230, 50));
  }

  private static DoubleUnaryOperator share(double share, double millis) {
    return seconds -> seconds >= LOSS_SECONDS && seconds < LOSS_SECONDS + millis / 1e3 ? share : 1;
  }

  private static Measured measured(DoubleUnaryOperator shareAt) {
    Outcome outcome = of(shareAt);
    return assertInstanceOf(Measured.class, outcome, outcome.sentence());
  }

  @ParameterizedTest
  @CsvSource({"0.8, 60", "0.8, 50", "0.8, 15", "0.5, 30", "0.3, 100"})
  void supplyThatSagsIsNoGap(double share, double millis) {
    Outcome outcome = of(share(share, millis));

    assertInstanceOf(Refused.class, outcome, outcome.sentence());
    assertTrue(outcome.sentence().contains("a gap is not shown"), outcome.sentence());
  }

  @Test
  void interruptionIsAGapHoweverLong() {
    assertEquals(60, measured(share(0, 60)).transferMillis(), 0.05);
  }

  @Test
  void recoveryIsTheFirstCycleThatStaysWithinTenPercent() {
    Double recovery = measured(share(0, 33)).recoveryMillis();

    assertNotNull(recovery);
    assertTrue(recovery >= 33 - CYCLE_MILLIS / 2 && recovery <= 33 + CYCLE_MILLIS / 2);
  }

  @Test
  void thereIsNoRecoveryWhereTheRmsNeverLeaves() {
    assertNull(measured(share(0, 0.8)).recoveryMillis());
  }

  @Test
  void thereIsNoRecoveryWhereTheSupplyStaysLow() {
    DoubleUnaryOperator low = seconds -> seconds < LOSS_SECONDS + 0.03 ? 1 : 0.85;

    assertNull(
        measured(seconds -> share(0, 30).applyAsDouble(seconds) * low.applyAsDouble(seconds))
            .recoveryMillis());
  }
}
