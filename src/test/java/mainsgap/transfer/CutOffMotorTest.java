package mainsgap.transfer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import mainsgap.signal.ChannelRole;
import mainsgap.signal.Event;
import mainsgap.signal.TimeAxis;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.Outcome;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Mains of 230 V and 50 Hz is lost upstream, a motor on the branch runs on and feeds the load until
 * the unit's own relay cuts it off: the gap begins at the loss, and no dead load is a return.
 */
class CutOffMotorTest {
  private static final MeasuringTask TASK = new MeasuringTask(Event.LOSS, 230, 50);
  private static final double NOISE_VOLTS = 2;

  @ParameterizedTest
  @CsvSource({
    "183.75, 0.68, 53, 46, 2.3, 15.7",
    "164.2, 0.83, 66, 45, 3.5, 27.4",
    "178.1, 0.75, 49, 45, 2.2, 6.4",
    "144.9, 0.64, 21, 48, 3.9, 16.1",
    "158.9, 0.72, 60, 46, 4.5, 54.2"
  })
  void aMotorThatIsCutOffEndsNoGap(
      double lossMillis,
      double height,
      double decayMillis,
      double hertz,
      double cutOffMillis,
      double gapMillis) {
    SketchedCapture sketch = new SketchedCapture(new TimeAxis(0, 1e-5, 45_000, 0));
    double phase = 360 * 50 * 1e-3 * lossMillis;
    sketch.with(
        ChannelRole.OUTPUT,
        NOISE_VOLTS,
        seconds -> {
          double since = 1e3 * seconds - lossMillis;
          if (since < 0) {
            return SketchedCapture.mains(seconds);
          }
          if (since < cutOffMillis) {
            double left = height * Math.exp(-since / decayMillis);
            return left * SketchedCapture.sine(1e-3 * since, hertz, phase);
          }
          return since < gapMillis ? 0 : SketchedCapture.inverter(seconds);
        });
    Outcome outcome = TransferMeasurement.measure(sketch.capture(), TASK);
    Measured gap = assertInstanceOf(Measured.class, outcome, outcome.sentence());
    assertEquals(gapMillis, gap.transferMillis(), 0.1, outcome.sentence());
    assertEquals(0, gap.furtherInterruptions().count(), outcome.sentence());
  }
}
