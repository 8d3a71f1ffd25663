package mainsgap.transfer.event;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.List;
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
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Mains of 230 V, 50 Hz that is followed again behind an opening, and yet was lost there: the
 * output returns in its phase, or the switch bounces. What is left on the load in between is a
 * level, or decays with 5 ms; waveforms in closed form.
 */
class FollowedAgainTest {
  private static final TimeAxis TIME = new TimeAxis(0, 1e-5, 30_000, 0);
  private static final double PEAK = 230 * Math.sqrt(2);
  private static final double LEVEL = Double.POSITIVE_INFINITY;

  /** From one time to another, in milliseconds. */
  private record Dead(double fromMillis, double toMillis) {}

  private static double sine(double millis, double radians) {
    return PEAK * Math.sin(2 * Math.PI * 50e-3 * millis + radians);
  }

  /** Mains up to the end of the last dead stretch, then the output. */
  private static DoubleUnaryOperator load(
      double radians, double outputRadians, double decayMillis, List<Dead> dead) {
    double end = dead.get(dead.size() - 1).toMillis();
    return millis ->
        dead.stream()
            .filter(one -> millis >= one.fromMillis() && millis < one.toMillis())
            .mapToDouble(
                one ->
                    sine(one.fromMillis(), radians)
                        * Math.exp((one.fromMillis() - millis) / decayMillis))
            .findFirst()
            .orElseGet(() -> sine(millis, millis < end ? radians : outputRadians));
  }

  private static Measured measured(DoubleUnaryOperator load, double noiseVolts) {
    SplittableRandom dice = new SplittableRandom(5);
    ByteBuffer block = ByteBuffer.allocate(TIME.length() * 8).order(ByteOrder.LITTLE_ENDIAN);
    for (int i = 0; i < TIME.length(); i++) {
      block.putDouble(
          load.applyAsDouble(1e3 * TIME.secondsAt(i)) + noiseVolts * dice.nextGaussian());
    }
    Waveform output = new Waveform(block.array(), CodeFormat.REAL_64_LSB_FIRST, Scale.VOLTS);
    return assertInstanceOf(
        Measured.class,
        TransferMeasurement.measure(
            Capture.ofOutput(TIME, output), new MeasuringTask(Event.LOSS, 230, 50)));
  }

  @ParameterizedTest
  @CsvSource({"2", "5", "8", "11"})
  void aGapIsMeasuredWhereTheOutputReturnsInPhase(double gapMillis) {
    Dead gap = new Dead(141.944, 141.944 + gapMillis);

    Measured found = measured(load(0, 0, 5, List.of(gap)), 3);

    assertEquals(gapMillis, found.transferMillis(), 0.1);
    assertEquals(0, found.furtherInterruptions().count());
  }

  @Test
  void aFirstGapIsTheEventThoughAnotherFollowsTheReturnInPhase() {
    List<Dead> gaps = List.of(new Dead(141.2, 150.5), new Dead(172.7, 189.9));

    Measured found = measured(load(5.2601, 5.2601, LEVEL, gaps), 1);

    assertEquals(9.3, found.transferMillis(), 0.1);
    assertEquals(1, found.furtherInterruptions().count());
  }

  @Test
  void anOpeningBehindWhichTheLoadDecaysIsTheFirstOneOfABounce() {
    List<Dead> gaps = List.of(new Dead(140.278, 142.278), new Dead(144.278, 154.978));

    Measured found = measured(load(0, 1, 5, gaps), 1);

    assertEquals(140.278, 1e3 * found.lossSeconds(), 0.05);
    assertEquals(154.978, 1e3 * found.returnSeconds(), 0.05);
  }
}
