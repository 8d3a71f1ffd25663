package mainsgap.transfer.event;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import mainsgap.signal.Capture;
import mainsgap.signal.CodeFormat;
import mainsgap.signal.Event;
import mainsgap.signal.Scale;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.Waveform;
import mainsgap.transfer.TransferMeasurement;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.NoReturn;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Refused;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What a healthy 230 V supply of 50 Hz carries now and then is no gap, and hides none. The waves
 * are in closed form; their sizes are common practice.
 */
class DisturbanceTest {
  private static final double PEAK = 230 * Math.sqrt(2);
  private static final double INTERVAL_SECONDS = 10e-6;
  private static final double STEP_VOLTS = 0.05;
  private static final double NOISE_VOLTS = 0.5;
  private static final long SEED = 11;
  private static final double END_SECONDS = 0.5;

  /** At 45 degrees, about. */
  private static final double DISTURBED_SECONDS = 0.20253;

  private static double sine(double seconds) {
    return PEAK * Math.sin(2 * Math.PI * 50 * seconds);
  }

  /** Half a millisecond wide at its foot, 400 V high. */
  private static double spiked(double seconds) {
    double since = seconds - DISTURBED_SECONDS;
    boolean on = since >= 0 && since < 0.5e-3;
    return sine(seconds) + (on ? 400 * Math.sin(Math.PI * since / 0.5e-3) : 0);
  }

  /** A converter that commutates takes half of the voltage away for a quarter millisecond. */
  private static double notched(double seconds) {
    double since = seconds - DISTURBED_SECONDS;
    return since >= 0 && since < 0.25e-3 ? sine(seconds) / 2 : sine(seconds);
  }

  /** A capacitor bank switched in: 0.8 of peak at 600 Hz, over in some milliseconds. */
  private static double ringing(double seconds) {
    double since = seconds - DISTURBED_SECONDS;
    double ring = Math.exp(-since / 2e-3) * Math.sin(2 * Math.PI * 600 * since);
    return sine(seconds) - (since >= 0 ? 0.8 * PEAK * ring : 0);
  }

  private static Outcome measured(DoubleUnaryOperator load) {
    int n = (int) (END_SECONDS / INTERVAL_SECONDS);
    SplittableRandom random = new SplittableRandom(SEED);
    byte[] block = new byte[2 * n];
    for (int i = 0; i < n; i++) {
      double volts = load.applyAsDouble(i * INTERVAL_SECONDS) + NOISE_VOLTS * random.nextGaussian();
      int code = (int) Math.round(volts / STEP_VOLTS);
      block[2 * i] = (byte) code;
      block[2 * i + 1] = (byte) (code >> 8);
    }
    Scale scale = new Scale(0, STEP_VOLTS, 0, -32_768, 32_767);
    return TransferMeasurement.measure(
        Capture.ofOutput(
            new TimeAxis(0, INTERVAL_SECONDS, n, 0),
            new Waveform(block, CodeFormat.SIGNED_16_LSB_FIRST, scale)),
        new MeasuringTask(Event.LOSS, 230, 50));
  }

  private static DoubleUnaryOperator disturbed(String disturbance) {
    return switch (disturbance) {
      case "spike" -> DisturbanceTest::spiked;
      case "notch" -> DisturbanceTest::notched;
      case "ring" -> DisturbanceTest::ringing;
      default -> throw new IllegalArgumentException(disturbance);
    };
  }

  @ParameterizedTest
  @CsvSource({"spike", "notch", "ring"})
  void aDisturbanceOfAHealthySupplyIsNoGap(String disturbance) {
    Refused refused = assertInstanceOf(Refused.class, measured(disturbed(disturbance)));
    assertEquals(
        "no event: the output is disturbed at 202.5 ms of the time axis, but a gap is not shown"
            + " there: look at the trace, and watch mains on a second channel",
        refused.reason());
  }

  @ParameterizedTest
  @CsvSource({"spike", "notch", "ring"})
  void aGapBehindADisturbanceIsMeasured(String disturbance) {
    DoubleUnaryOperator load = disturbed(disturbance);
    Measured found =
        assertInstanceOf(
            Measured.class, measured(t -> t >= 0.2837 && t < 0.2937 ? 0 : load.applyAsDouble(t)));
    assertEquals(10, found.transferMillis(), 0.03);
  }

  /** Half a cycle of a supply does not settle. */
  @Test
  void aReturnTooLateToBeJudgedIsNoReturn() {
    NoReturn found =
        assertInstanceOf(NoReturn.class, measured(t -> t >= 0.2237 && t < 0.4925 ? 0 : sine(t)));
    assertEquals(268.8, found.atLeastMillis(), 0.5);
  }
}
