package mainsgap.scope;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.ByteBuffer;
import java.util.OptionalDouble;
import mainsgap.signal.CodeFormat;
import mainsgap.signal.Scale;
import mainsgap.signal.Waveform;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WaveformReaderTest {
  /** SCPI-1999 Vol. 2 7.2.1.4 and 7.2.1.5, as the nearest 32-bit floats. */
  @ParameterizedTest
  @CsvSource({"9.91E37, 1", "9.9E37, 1", "-9.9E37, 1", "9.91E37, 0.001", "9.9E37, 100"})
  void holesAndOverloadsOfFloatsAreRefusedAtAnyProbeFactor(float sent, double probeFactor) {
    ScopeException refused =
        assertThrows(ScopeException.class, () -> check(new float[] {325, sent}, probeFactor));
    assertEquals(
        "channel 2 has no voltage in sample 2 of 2: the record has a hole or an overload; choose a"
            + " larger range and repeat",
        refused.getMessage());
  }

  @ParameterizedTest
  @CsvSource({"0, 1", "-340, 1", "3.4, 100"})
  void voltagesAreTaken(float sent, double probeFactor) {
    assertDoesNotThrow(() -> check(new float[] {sent}, probeFactor));
  }

  private static void check(float[] sent, double probeFactor) {
    ByteBuffer block = ByteBuffer.allocate(sent.length * Float.BYTES);
    for (float volts : sent) {
      block.putFloat(volts);
    }
    Scale scale = new Scale(0, probeFactor, 0, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
    WaveformReader.checkWhole(
        new WaveformReader.Channel(2, probeFactor, 500),
        new Waveform(block.array(), CodeFormat.REAL_32_MSB_FIRST, scale),
        OptionalDouble.empty());
  }
}
