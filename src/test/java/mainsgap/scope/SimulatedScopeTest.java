package mainsgap.scope;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.Map;
import java.util.Set;
import mainsgap.link.ResourceName;
import mainsgap.scope.CaptureRequest.Input;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.Event;
import mainsgap.signal.Waveform;
import mainsgap.simulation.PreambleVariant;
import mainsgap.simulation.ScopeFault;
import mainsgap.simulation.SimulatedBench;
import mainsgap.simulation.SimulatedBenchSettings;
import mainsgap.simulation.SimulatedInstrument;
import mainsgap.simulation.SimulatedUnit;
import mainsgap.waiting.Clock;
import mainsgap.waiting.Deadline;
import mainsgap.waiting.StopRequest;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Both profiles on the simulated bench, over the wire. */
class SimulatedScopeTest {
  private static final String TEN_FIELD = "ten-field-preamble";
  private static final String STRICT = "scpi-1999-digitizer";
  private static final SimulatedBenchSettings BENCH =
      SimulatedBenchSettings.of(SimulatedUnit.STANDBY, 7);

  /** EN 50160: the supply stays within 10 % of nominal. */
  private static final double SUPPLY_BAND_VOLTS = 23;

  private static final Clock CLOCK = Clock.system();
  private static final StopRequest STOP = new StopRequest();

  @ParameterizedTest
  @ValueSource(strings = {TEN_FIELD, STRICT})
  void theProfileIsFoundByProbing(String profile) {
    try (SimulatedBench bench = SimulatedBench.start(BENCH);
        Oscilloscope scope = open(bench, profile, null)) {
      assertEquals(profiles().named(profile).limits(), scope.limits());
      assertTrue(scope.identity().model().startsWith("Simulated"));
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {TEN_FIELD, STRICT})
  void aLookShowsTheLiveSupply(String profile) {
    try (SimulatedBench bench = SimulatedBench.start(BENCH);
        Oscilloscope scope = open(bench, profile, profile)) {
      scope.configure(plan(scope, CatchMethod.FORCED_RECORD));
      Capture look = scope.look();
      assertEquals(230, rmsVolts(look.output()), SUPPLY_BAND_VOLTS);
      assertEquals(230, rmsVolts(mainsOf(look)), SUPPLY_BAND_VOLTS);
      assertTrue(look.time().durationSeconds() >= 2 / 50.0);
    }
  }

  @ParameterizedTest
  @CsvSource({
    TEN_FIELD + ", FORCED_RECORD",
    TEN_FIELD + ", TIME_OUT_TRIGGER",
    STRICT + ", FORCED_RECORD"
  })
  void theLossIsInTheRecord(String profile, CatchMethod method) {
    try (SimulatedBench bench = SimulatedBench.start(BENCH);
        Oscilloscope scope = open(bench, profile, profile)) {
      CapturePlan plan = plan(scope, method);
      scope.configure(plan);
      double before = rmsVolts(scope.look().output());
      assertEquals(230, before, SUPPLY_BAND_VOLTS);
      scope.arm();
      await(scope, AcquisitionState.WATCHING);
      bench.openMains();
      await(scope, AcquisitionState.COMPLETE);
      Capture capture = scope.read();
      assertEquals(plan.samples(), capture.time().length());
      assertEquals(-plan.preTriggerSeconds(), capture.time().firstSampleSeconds(), 1e-6);
      Waveform mains = mainsOf(capture);
      assertTrue(rmsVolts(mains, 0.0, 0.02) > 200, "mains at the start of the record");
      assertTrue(rmsVolts(mains, 0.98, 1.0) < 20, "no mains at its end");
      assertTrue(rmsVolts(capture.output(), 0.98, 1.0) > 150, "the backup feeds the output");
    }
  }

  @Test
  void bothScalingsGiveTheSameVolts() {
    SimulatedBenchSettings inCodes =
        BENCH.withScope(
            new SimulatedBenchSettings.Scope(
                12, PreambleVariant.ORIGIN_IN_CODES, ScopeFault.NONE, Set.of()));
    try (SimulatedBench bench = SimulatedBench.start(inCodes);
        Oscilloscope scope = open(bench, TEN_FIELD, TEN_FIELD)) {
      scope.configure(plan(scope, CatchMethod.FORCED_RECORD));
      assertEquals(230, rmsVolts(scope.look().output()), SUPPLY_BAND_VOLTS);
    }
  }

  @ParameterizedTest
  @EnumSource(
      value = ScopeFault.class,
      names = {
        "TEXT_FOR_NUMBER",
        "ANSWERS_WITH_ERROR",
        "CLIPPING_RANGE",
        "SHORT_BLOCK",
        "CLOSES_IN_MID_BLOCK"
      })
  void aFaultyInstrumentGivesASentence(ScopeFault fault) {
    try (SimulatedBench bench = SimulatedBench.start(BENCH.withFault(fault));
        Oscilloscope scope = open(bench, TEN_FIELD, TEN_FIELD)) {
      ScopeException refused =
          assertThrows(
              ScopeException.class,
              () -> {
                scope.configure(plan(scope, CatchMethod.FORCED_RECORD));
                scope.look();
              });
      String expected =
          switch (fault) {
            case CLIPPING_RANGE -> "supply peak: choose 490 V or more";
            case ANSWERS_WITH_ERROR -> "starting the acquisition: ";
            case TEXT_FOR_NUMBER -> "reading back the range";
            default -> "reading channel 1: ";
          };
      assertTrue(String.valueOf(refused.getMessage()).contains(expected), refused.getMessage());
    }
  }

  private static CapturePlan plan(Oscilloscope scope, CatchMethod method) {
    Map<ChannelRole, Input> inputs =
        Map.of(
            ChannelRole.OUTPUT,
            Input.ofSupply(1, SimulatedBench.PROBE_FACTOR),
            ChannelRole.MAINS,
            Input.ofSupply(2, SimulatedBench.PROBE_FACTOR));
    return CapturePlanner.plan(
        new CaptureRequest(Event.LOSS, 230, 50, 0.02, inputs, true, method), scope.limits());
  }

  private static Oscilloscope open(
      SimulatedBench bench, String dialect, @Nullable String profileName) {
    String resource =
        dialect.equals(TEN_FIELD)
            ? bench.resource(SimulatedInstrument.TEN_FIELD_SCOPE)
            : bench.resource(SimulatedInstrument.DIGITIZER);
    return Oscilloscopes.open(ResourceName.parse(resource), profiles(), profileName, CLOCK, STOP);
  }

  private static InstrumentProfiles profiles() {
    return InstrumentProfiles.load(ShippedProfilesTest.FOLDER);
  }

  private static void await(Oscilloscope scope, AcquisitionState wanted) {
    Deadline deadline = Deadline.after(Duration.ofSeconds(20), CLOCK);
    AcquisitionState state = scope.state();
    while (state != wanted) {
      assertTrue(!deadline.hasPassed(), "still " + state + ", expected " + wanted);
      CLOCK.pause(Duration.ofMillis(5), STOP);
      state = scope.state();
    }
  }

  private static Waveform mainsOf(Capture capture) {
    return capture.waveform(ChannelRole.MAINS).orElseThrow();
  }

  private static double rmsVolts(Waveform waveform) {
    return rmsVolts(waveform, 0, 1);
  }

  private static double rmsVolts(Waveform waveform, double fromPart, double toPart) {
    int from = (int) (fromPart * waveform.length());
    int to = (int) (toPart * waveform.length());
    double sum = 0;
    for (double volts : waveform.volts(from, to)) {
      sum += volts * volts;
    }
    return Math.sqrt(sum / (to - from));
  }
}
