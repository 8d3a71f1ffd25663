package mainsgap.scope;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import mainsgap.link.ResourceName;
import mainsgap.link.SerialBridge;
import mainsgap.signal.Capture;
import mainsgap.simulation.SimulatedBench;
import mainsgap.simulation.SimulatedBenchSettings;
import mainsgap.simulation.SimulatedInstrument;
import mainsgap.simulation.SimulatedUnit;
import mainsgap.waiting.Clock;
import mainsgap.waiting.StopRequest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The simulated scope behind a pseudo-terminal, which is faster than any serial line. */
class SerialCaptureTest {

  @Test
  void aWholeCaptureComesOverASerialLine(@TempDir Path folder) throws IOException {
    SerialBridge.assumeThere();
    String profile = "ten-field-preamble";
    try (SimulatedBench bench =
            SimulatedBench.start(SimulatedBenchSettings.of(SimulatedUnit.STANDBY, 7));
        SerialBridge bridge =
            SerialBridge.to(bench.port(SimulatedInstrument.answeringTo(profile)), folder, "scope");
        Oscilloscope scope =
            Oscilloscopes.open(
                ResourceName.parse(bridge.resource("115200")),
                InstrumentProfiles.load(ShippedProfilesTest.FOLDER),
                profile,
                Clock.system(),
                new StopRequest())) {
      CapturePlan plan = EveryProfileTest.plan(scope, CatchMethod.TIME_OUT_TRIGGER, 230);
      scope.configure(plan);
      scope.arm();
      EveryProfileTest.await(scope, AcquisitionState.WATCHING);
      bench.openMains();
      EveryProfileTest.await(scope, AcquisitionState.COMPLETE);
      Capture capture = scope.read();
      assertEquals(plan.samples(), capture.time().length());
      EveryProfileTest.assertAsRecorded(bench, profile, capture);
    }
  }
}
