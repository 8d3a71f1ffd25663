package mainsgap.transfer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
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

/** What the first cycles of a record tell of the supply before, in the words of a refusal. */
class FirstCyclesTest {
  private static final TimeAxis TIME = new TimeAxis(0, 1e-5, 40_000, 0);
  private static final double PEAK = 230 * Math.sqrt(2);

  private static double sine(double hertz, double seconds) {
    return PEAK * Math.sin(2 * Math.PI * hertz * seconds);
  }

  private static Outcome outcome(DoubleUnaryOperator output, double nominalHertz) {
    SplittableRandom dice = new SplittableRandom(7);
    ByteBuffer block = ByteBuffer.allocate(TIME.length() * 8).order(ByteOrder.LITTLE_ENDIAN);
    for (int i = 0; i < TIME.length(); i++) {
      block.putDouble(output.applyAsDouble(TIME.secondsAt(i)) + dice.nextGaussian());
    }
    Waveform waveform = new Waveform(block.array(), CodeFormat.REAL_64_LSB_FIRST, Scale.VOLTS);
    return TransferMeasurement.measure(
        Capture.ofOutput(TIME, waveform), new MeasuringTask(Event.LOSS, 230, nominalHertz));
  }

  private static void assertRefused(String beginning, Outcome outcome) {
    String reason = assertInstanceOf(Refused.class, outcome).reason();
    assertTrue(reason.startsWith(beginning), reason);
  }

  @Test
  void aLevelIsNoMainsVoltage() {
    assertRefused("the supply before is no mains voltage", outcome(t -> 230, 50));
  }

  @Test
  void anotherFrequencyIsToldAsItIs() {
    assertRefused("the supply before has about 50.0 Hz", outcome(t -> sine(50, t), 60));
    assertRefused("the supply before has about 400 Hz", outcome(t -> sine(400, t), 50));
  }

  @Test
  void aSquareWaveWithoutAnEventHasNone() {
    Outcome outcome = outcome(t -> 230 * Math.signum(sine(50, t + 1e-6)), 50);
    assertRefused("no event: ", outcome);
    assertTrue(((Refused) outcome).isWithoutEvent());
  }

  @Test
  void aGapBehindASquareWaveIsMeasured() {
    Outcome outcome =
        outcome(t -> t > 0.2031 && t < 0.2138 ? 0 : 230 * Math.signum(sine(50, t + 1e-6)), 50);
    assertEquals(10.7, assertInstanceOf(Measured.class, outcome).transferMillis(), 0.03);
  }

  @Test
  void anEventInTheFirstCyclesLeavesTooFewBeforeIt() {
    assertRefused(
        "something happens within the first 2 cycles",
        outcome(t -> t > 0.012 && t < 0.02 ? 0 : sine(50, t), 50));
  }
}
