package mainsgap.scope;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import mainsgap.link.ResourceName;
import mainsgap.scope.CaptureRequest.Input;
import mainsgap.signal.ChannelRole;
import mainsgap.simulation.ScopeFault;
import mainsgap.simulation.SimulatedBench;
import mainsgap.simulation.SimulatedBenchSettings;
import mainsgap.simulation.SimulatedInstrument;
import mainsgap.simulation.SimulatedUnit;
import mainsgap.waiting.Clock;
import mainsgap.waiting.StopRequest;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A whole capture, walked through and explained, on every simulated instrument. */
class CaptureWalkTest {
  private static final SimulatedBenchSettings BENCH =
      SimulatedBenchSettings.of(SimulatedUnit.STANDBY, 7);
  private static final CaptureWalk.Connected CONNECTED =
      new CaptureWalk.Connected(
          Map.of(
              ChannelRole.OUTPUT,
              Input.ofSupply(1, SimulatedBench.PROBE_FACTOR),
              ChannelRole.MAINS,
              Input.ofSupply(2, SimulatedBench.PROBE_FACTOR)),
          230);

  private final InstrumentProfiles profiles = InstrumentProfiles.load(ShippedProfilesTest.FOLDER);
  private final List<WalkStep> steps = new ArrayList<>();

  @ParameterizedTest
  @EnumSource(SimulatedInstrument.class)
  void everyMessageIsExplained(SimulatedInstrument instrument) {
    try (SimulatedBench bench = SimulatedBench.start(BENCH)) {
      CaptureWalk.Walked walked = walk(bench, instrument, CONNECTED);
      assertTrue(walked.capture().time().durationSeconds() > 0.15);
      assertEquals(2, walked.capture().waveforms().size());
      for (WalkStep step : steps) {
        assertFalse(step.means().isEmpty(), () -> "not explained: " + step);
        assertFalse(step.sent().isEmpty(), step::toString);
      }
      assertTrue(steps.stream().anyMatch(step -> step.key().equals("commands.arm")));
      assertTrue(
          steps.stream().anyMatch(step -> step.replyMeans().startsWith("complete")), () -> told());
      assertEquals("commands.disarm", steps.get(steps.size() - 2).key(), () -> told());
    }
  }

  @Test
  void withNothingSaidTheFirstChannelIsRecordedInTheLargestRange() {
    try (SimulatedBench bench = SimulatedBench.start(BENCH)) {
      CaptureWalk.Walked walked = walk(bench, SimulatedInstrument.TEN_FIELD_SCOPE, null);
      assertEquals(1, walked.capture().waveforms().size());
      assertTrue(told().contains(":CHAN1:SCAL 9"), told());
    }
  }

  @Test
  void whatFailsIsToldAfterWhatWasSentBefore() {
    try (SimulatedBench bench = SimulatedBench.start(BENCH.withFault(ScopeFault.SHORT_BLOCK))) {
      ScopeException refused =
          assertThrows(
              ScopeException.class,
              () -> walk(bench, SimulatedInstrument.TEN_FIELD_SCOPE, CONNECTED));
      assertTrue(String.valueOf(refused.getMessage()).startsWith("reading channel"));
      assertTrue(told().contains(":WAV:PRE?"), told());
    }
  }

  private CaptureWalk.Walked walk(
      SimulatedBench bench,
      SimulatedInstrument instrument,
      CaptureWalk.@Nullable Connected connected) {
    return CaptureWalk.walk(
        InstrumentAccess.plain(
            ResourceName.parse(bench.resource(instrument)), Clock.system(), new StopRequest()),
        profiles.named(instrument.profile()),
        connected,
        steps::add);
  }

  private String told() {
    return String.join("\n", steps.stream().map(WalkStep::toString).toList());
  }
}
