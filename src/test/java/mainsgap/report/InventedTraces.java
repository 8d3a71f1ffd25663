package mainsgap.report;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import mainsgap.session.SessionHeader;
import mainsgap.signal.Capture;
import mainsgap.signal.CodeFormat;
import mainsgap.signal.Scale;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.Waveform;
import org.jspecify.annotations.Nullable;

/** Traces of invented units: a sine that is lost, nothing, and a sine again. */
final class InventedTraces {
  private static final double INTERVAL_SECONDS = 1e-4;
  private static final int SAMPLES = 1_500;
  private static final double FIRST_SECONDS = -0.05;
  private static final double VOLTS_PER_CODE = 0.02;

  private InventedTraces() {}

  /** Lost at {@code lossMillis}, back after {@code gapMillis}; null for never. */
  static AlignedTrace trace(String name, double lossMillis, @Nullable Double gapMillis) {
    double loss = lossMillis / 1e3;
    double back = gapMillis == null ? Double.POSITIVE_INFINITY : loss + gapMillis / 1e3;
    ByteBuffer block = ByteBuffer.allocate(2 * SAMPLES).order(ByteOrder.LITTLE_ENDIAN);
    for (int i = 0; i < SAMPLES; i++) {
      double at = FIRST_SECONDS + i * INTERVAL_SECONDS;
      double volts = at < loss || at >= back ? 325 * Math.sin(2 * Math.PI * 50 * at) : 0;
      block.putShort((short) Math.round(volts / VOLTS_PER_CODE));
    }
    Waveform output =
        new Waveform(
            block.array(),
            CodeFormat.SIGNED_16_LSB_FIRST,
            new Scale(0, VOLTS_PER_CODE, 0, -32768, 32767));
    SessionHeader header = InventedSessions.header(name, InventedSessions.LOSS_AT_230, Map.of());
    return new AlignedTrace(
        name,
        header,
        Capture.ofOutput(new TimeAxis(FIRST_SECONDS, INTERVAL_SECONDS, SAMPLES, 25), output),
        loss,
        gapMillis == null ? null : (Double) back,
        0.0);
  }

  static List<AlignedTrace> many(int count) {
    return IntStream.range(0, count)
        .mapToObj(
            i ->
                trace(
                    "Lumengrove " + (600 + i) + ", trial 1: " + (8 + i / 2.0) + " ms",
                    1 + i,
                    8 + i / 2.0))
        .toList();
  }
}
