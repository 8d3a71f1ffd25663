package mainsgap.arming;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.function.DoubleUnaryOperator;
import mainsgap.signal.Capture;
import mainsgap.signal.TimeAxis;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EventInRecordTest {
  private static final double INTERVAL_SECONDS = 1e-4;

  /** A gap of 2 ms anywhere on the wave is seen; a supply that is 0.5 % slow is no event. */
  @ParameterizedTest
  @CsvSource({
    "50,    0,     0, false",
    "49.75, 0,     0, false",
    "50,    0.500, 0.502, true",
    "50,    0.503, 0.505, true",
    "50,    0.509, 0.511, true",
    "50,    0.900, 9, true"
  })
  void changeOfTheSupplyIsSeen(double hertz, double lost, double back, boolean seen) {
    DoubleUnaryOperator volts =
        at -> at >= lost && at < back ? 0 : 325 * Math.sin(2 * Math.PI * hertz * at);
    double[] samples = new double[10_000];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = volts.applyAsDouble(i * INTERVAL_SECONDS);
    }
    Capture capture =
        Capture.ofOutput(
            new TimeAxis(0, INTERVAL_SECONDS, samples.length, 0), Signals.waveform(samples));
    assertEquals(seen, EventInRecord.isIn(capture, 0.02));
  }
}
