package mainsgap.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Map;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.CodeFormat;
import mainsgap.signal.Event;
import mainsgap.signal.Scale;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.Waveform;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.Outcome;
import org.junit.jupiter.api.Test;

class SteadyMeasurementTest {

  @Test
  void aFaultOfTheMeasurementRefusesItsCaptureAlone() {
    Capture capture =
        new Capture(
            new TimeAxis(0, 1e-4, 2, 100),
            Map.of(
                ChannelRole.OUTPUT, new Waveform(new byte[2], CodeFormat.UNSIGNED_8, Scale.VOLTS)));
    Outcome outcome =
        SteadyMeasurement.measure(
            capture,
            new MeasuringTask(Event.LOSS, 230, 50),
            (measured, task) -> {
              throw new IllegalStateException("no such sample");
            });
    assertEquals(Outcome.Kind.REFUSED, outcome.kind());
    assertEquals(
        "refused: the measurement itself failed (no such sample), a fault of the program: keep the capture,"
            + " and report it",
        outcome.sentence());
  }
}
