package mainsgap.transfer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.function.DoubleUnaryOperator;
import mainsgap.signal.Capture;
import mainsgap.signal.CodeFormat;
import mainsgap.signal.Event;
import mainsgap.signal.PeriodicModel;
import mainsgap.signal.Scale;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.Waveform;
import mainsgap.transfer.outcome.MeasuringTask;
import org.junit.jupiter.api.Test;

/** Against the sines from which the captures are made. */
class FittedSuppliesTest {
  private static final TimeAxis TIME = new TimeAxis(-0.2, 1e-5, 60_000, 0);
  private static final MeasuringTask TASK = new MeasuringTask(Event.LOSS, 230, 50);
  private static final double LOSS_SECONDS = 0.0033;
  private static final double RETURN_SECONDS = 0.0117;

  private static double mainsVolts(double seconds) {
    return 325 * Math.sin(2 * Math.PI * 50 * seconds);
  }

  private static double backupVolts(double seconds) {
    return 311 * Math.sin(2 * Math.PI * 50.2 * seconds + 0.4);
  }

  private static Capture capture(DoubleUnaryOperator volts) {
    ByteBuffer block = ByteBuffer.allocate(TIME.length() * 8).order(ByteOrder.LITTLE_ENDIAN);
    for (int i = 0; i < TIME.length(); i++) {
      block.putDouble(volts.applyAsDouble(TIME.secondsAt(i)));
    }
    return Capture.ofOutput(
        TIME, new Waveform(block.array(), CodeFormat.REAL_64_LSB_FIRST, Scale.VOLTS));
  }

  @Test
  void bothSuppliesAreThoseThatFedTheLoadAndGoOnThroughTheGap() {
    Capture capture =
        capture(
            seconds ->
                seconds < LOSS_SECONDS
                    ? mainsVolts(seconds)
                    : seconds < RETURN_SECONDS ? 0 : backupVolts(seconds));

    FittedSupplies supplies = FittedSupplies.of(capture, TASK);

    PeriodicModel before = supplies.before();
    PeriodicModel after = supplies.after();
    assertNotNull(before);
    assertNotNull(after);
    for (double seconds = LOSS_SECONDS - 0.02; seconds < RETURN_SECONDS + 0.02; seconds += 1e-3) {
      assertEquals(mainsVolts(seconds), before.voltsAt(seconds), 0.5);
      assertEquals(backupVolts(seconds), after.voltsAt(seconds), 0.5);
    }
  }

  @Test
  void withoutAReturnThereIsOnlyTheSupplyBefore() {
    Capture capture = capture(seconds -> seconds < LOSS_SECONDS ? mainsVolts(seconds) : 0);

    FittedSupplies supplies = FittedSupplies.of(capture, TASK);

    PeriodicModel before = supplies.before();
    assertNotNull(before);
    assertEquals(mainsVolts(0.004), before.voltsAt(0.004), 0.5);
    assertNull(supplies.after());
  }

  @Test
  void aCaptureThatIsRefusedOrHoldsNoEventHasNone() {
    assertEquals(FittedSupplies.NONE, FittedSupplies.of(capture(seconds -> 0), TASK));
    assertEquals(
        FittedSupplies.NONE, FittedSupplies.of(capture(FittedSuppliesTest::mainsVolts), TASK));
  }
}
