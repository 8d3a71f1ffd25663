package mainsgap.transfer.instant;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.SplittableRandom;
import mainsgap.signal.Capture;
import mainsgap.signal.CodeFormat;
import mainsgap.signal.Event;
import mainsgap.signal.Scale;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.Waveform;
import mainsgap.transfer.TransferMeasurement;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.Outcome;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A contact that opens before the zero crossing at 250 ms and arcs up to it: the load has mains of
 * 230 V, 50 Hz less the arc's voltage (10 to 20 V, common practice), then nothing for 12 ms.
 */
class ArcedLossTest {
  private static final double INTERVAL_SECONDS = 5e-6;
  private static final double CROSSING_SECONDS = 0.25;
  private static final double RETURN_SECONDS = 0.262;
  private static final double PEAK = 230 * Math.sqrt(2);

  @ParameterizedTest
  @CsvSource({"5, 12", "7, 10", "7, 20", "10, 15", "13, 12", "20, 15", "45, 10", "80, 20"})
  void theLossIsWhereTheContactOpens(double degreesBefore, double arcVolts) {
    double loss = CROSSING_SECONDS - degreesBefore / 360 / 50;

    Outcome outcome =
        TransferMeasurement.measure(
            Capture.ofOutput(new TimeAxis(0, INTERVAL_SECONDS, 100_000, 0), output(loss, arcVolts)),
            new MeasuringTask(Event.LOSS, 230, 50));

    Measured measured = assertInstanceOf(Measured.class, outcome);
    assertEquals(1e6 * loss, 1e6 * measured.lossSeconds(), 2 * 1e6 * INTERVAL_SECONDS);
    assertEquals(
        1e3 * (RETURN_SECONDS - loss), measured.transferMillis(), 2 * 1e3 * INTERVAL_SECONDS);
  }

  private static Waveform output(double lossSeconds, double arcVolts) {
    SplittableRandom dice = new SplittableRandom(11);
    ByteBuffer block = ByteBuffer.allocate(100_000 * 8).order(ByteOrder.LITTLE_ENDIAN);
    for (int i = 0; i < 100_000; i++) {
      block.putDouble(
          volts(i * INTERVAL_SECONDS, lossSeconds, arcVolts) + 0.5 * dice.nextGaussian());
    }
    return new Waveform(block.array(), CodeFormat.REAL_64_LSB_FIRST, Scale.VOLTS);
  }

  private static double volts(double seconds, double lossSeconds, double arcVolts) {
    double mains = PEAK * Math.sin(2 * Math.PI * 50 * seconds);
    if (seconds < lossSeconds) {
      return mains;
    }
    if (seconds < CROSSING_SECONDS) {
      return Math.signum(mains) * Math.max(0, Math.abs(mains) - arcVolts);
    }
    return seconds < RETURN_SECONDS ? 0 : PEAK * Math.sin(2 * Math.PI * 50 * seconds + 1.2);
  }
}
