package mainsgap.transfer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.util.function.DoubleUnaryOperator;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.Event;
import mainsgap.signal.TimeAxis;
import mainsgap.transfer.bank.Kind;
import mainsgap.transfer.bank.KnownCapture;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.Outcome;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Gaps in which the load goes on nearly as its supply would; mains of 230 V and 50 Hz. */
class KeptVoltageTest {
  private static final MeasuringTask TASK = new MeasuringTask(Event.LOSS, 230, 50);
  private static final double NOISE_VOLTS = 3;
  private static final double PEAK_VOLTS = SketchedCapture.PEAK_VOLTS;

  private static Outcome outcome(DoubleUnaryOperator output) {
    SketchedCapture sketch = new SketchedCapture(new TimeAxis(0, 1e-5, 40_000, 0));
    sketch.with(ChannelRole.OUTPUT, NOISE_VOLTS, output);
    return TransferMeasurement.measure(sketch.capture(), TASK);
  }

  private static DoubleUnaryOperator gap(
      double lossSeconds, double millis, DoubleUnaryOperator left, DoubleUnaryOperator back) {
    return seconds -> {
      if (seconds < lossSeconds) {
        return SketchedCapture.mains(seconds);
      }
      return seconds < lossSeconds + 1e-3 * millis
          ? left.applyAsDouble(seconds - lossSeconds)
          : back.applyAsDouble(seconds);
    };
  }

  private static void assertGap(double millis, double withinMillis, Outcome outcome) {
    Measured gap = assertInstanceOf(Measured.class, outcome, outcome.sentence());
    assertEquals(millis, gap.transferMillis(), gap.uncertaintyMillis(), outcome.sentence());
    assertEquals(millis, gap.transferMillis(), withinMillis, outcome.sentence());
  }

  /** From its peak on the supply falls as fast, for a while, as the load discharges. */
  @ParameterizedTest
  @CsvSource({"1.2, 17", "1.5, 14", "1.35, 15"})
  void aLoadThatDischargesAlongItsSupplyIsLeft(double gapMillis, double decayMillis) {
    assertGap(
        gapMillis,
        0.1,
        outcome(
            gap(
                0.115,
                gapMillis,
                since -> -PEAK_VOLTS * Math.exp(-1e3 * since / decayMillis),
                SketchedCapture::inverter)));
  }

  /** It leaves the supply without a step, and comes back to the same one with a step. */
  @ParameterizedTest
  @CsvSource({"1.2, 0.4", "1.4, 0.5", "1.1, 0.3"})
  void aMotorBetweenTwoSuppliesInPhaseIsNoPulse(double gapMillis, double height) {
    assertGap(
        gapMillis,
        0.05,
        outcome(
            gap(
                0.12,
                gapMillis,
                since -> height * SketchedCapture.sine(since, 46, 0),
                seconds -> SketchedCapture.sine(seconds, 50.3, -109))));
  }

  /** What is left was fitted to its beginning, and misses the end of a long gap. */
  @ParameterizedTest
  @CsvSource({
    "MOTOR, 1846",
    "MOTOR, 1962",
    "MOTOR, 2369",
    "MOTOR, 415",
    "MOTOR, 987",
    "MOTOR, 353",
    "MOTOR, 714",
    "MOTOR, 1289",
    "DECAYING_RESIDUE, 87",
    "DECAYING_RESIDUE, 169",
    "DECAYING_RESIDUE, 1149"
  })
  void capturesOfTheBankThatWereToldWrongly(Kind kind, long seed) {
    KnownCapture known = kind.capture(seed);
    Outcome outcome = TransferMeasurement.measure(known.capture(), known.task());
    assertGap(known.truth().transferMillis(), 0.2, outcome);
  }
}
