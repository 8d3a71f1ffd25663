package mainsgap.scope;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import mainsgap.link.ResourceName;
import mainsgap.scope.CaptureRequest.Input;
import mainsgap.scpi.ScpiInstrument;
import mainsgap.scpi.ScpiOptions;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.Event;
import mainsgap.signal.Waveform;
import mainsgap.simulation.Recorded;
import mainsgap.simulation.ScopeFault;
import mainsgap.simulation.ScopeQuirk;
import mainsgap.simulation.SimulatedBench;
import mainsgap.simulation.SimulatedBenchSettings;
import mainsgap.simulation.SimulatedInstrument;
import mainsgap.simulation.SimulatedUnit;
import mainsgap.waiting.Clock;
import mainsgap.waiting.Deadline;
import mainsgap.waiting.StopRequest;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Every profile in the folder on the simulated instrument of its family, over the wire. */
class EveryProfileTest {
  private static final SimulatedBenchSettings BENCH =
      SimulatedBenchSettings.of(SimulatedUnit.STANDBY, 7);
  private static final int OUTPUT = 1;
  private static final int MAINS = 2;
  private static final Map<ChannelRole, Integer> CHANNELS =
      Map.of(ChannelRole.OUTPUT, OUTPUT, ChannelRole.MAINS, MAINS);

  /** EN 50160: the supply stays within 10 % of nominal. */
  private static final double SUPPLY_BAND_VOLTS = 23;

  private static final Clock CLOCK = Clock.system();
  private static final StopRequest STOP = new StopRequest();

  static Stream<String> profileNames() {
    return profiles().all().stream().map(InstrumentProfile::name);
  }

  /** The surest way and the first trigger: what else triggers is another suite's. */
  static Stream<Arguments> waysToCatch() {
    Set<CatchMethod> tried = EnumSet.of(CatchMethod.FORCED_RECORD, CatchMethod.TIME_OUT_TRIGGER);
    return profiles().all().stream()
        .flatMap(
            profile ->
                profile.limits().methods().stream()
                    .filter(tried::contains)
                    .map(method -> Arguments.of(profile.name(), method)));
  }

  static Stream<Arguments> quirks() {
    return profileNames()
        .flatMap(
            profile ->
                EnumSet.complementOf(EnumSet.of(ScopeQuirk.HOLE_IN_RECORD)).stream()
                    .map(quirk -> Arguments.of(profile, quirk)));
  }

  static Stream<Arguments> faults() {
    Set<ScopeFault> tried =
        EnumSet.of(
            ScopeFault.TEXT_FOR_NUMBER,
            ScopeFault.ANSWERS_WITH_ERROR,
            ScopeFault.CLIPPING_RANGE,
            ScopeFault.SHORT_BLOCK,
            ScopeFault.CLOSES_IN_MID_BLOCK);
    return profileNames()
        .flatMap(profile -> tried.stream().map(fault -> Arguments.of(profile, fault)));
  }

  @ParameterizedTest
  @MethodSource("profileNames")
  void theInstrumentOfItsFamilyIsFoundByProbing(String profile) {
    ScpiOptions impatient = ScpiOptions.standard().withReplyTimeout(Duration.ofMillis(150));
    try (SimulatedBench bench = SimulatedBench.start(BENCH);
        ScpiInstrument instrument =
            ScpiInstrument.open(resource(bench, profile), impatient, CLOCK)) {
      ProbeReport report = new ProfileProbe(profiles(), instrument, STOP, step -> {}).run();
      assertEquals(List.of(profile), report.fitting());
      assertTrue(report.identity().model().startsWith("Simulated"));
    }
  }

  @ParameterizedTest
  @MethodSource("profileNames")
  void aLookShowsTheLiveSupply(String profile) {
    try (SimulatedBench bench = SimulatedBench.start(BENCH);
        Oscilloscope scope = open(bench, profile)) {
      scope.configure(plan(scope, CatchMethod.FORCED_RECORD, 230));
      Capture look = scope.look();
      assertEquals(230, rmsVolts(look.output(), 0, 1), SUPPLY_BAND_VOLTS);
      assertEquals(230, rmsVolts(mainsOf(look), 0, 1), SUPPLY_BAND_VOLTS);
      assertAsRecorded(bench, profile, look);
    }
  }

  @ParameterizedTest
  @MethodSource("waysToCatch")
  void theLossIsInTheRecordAsItWasRecorded(String profile, CatchMethod method) {
    try (SimulatedBench bench = SimulatedBench.start(BENCH);
        Oscilloscope scope = open(bench, profile)) {
      CapturePlan plan = plan(scope, method, 230);
      scope.configure(plan);
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
      assertAsRecorded(bench, profile, capture);
    }
  }

  /** More samples than any profile takes in one part, and so many that the last part is short. */
  @ParameterizedTest
  @MethodSource("profileNames")
  void aDeepRecordIsReadInParts(String profile) {
    try (SimulatedBench bench = SimulatedBench.start(BENCH);
        Oscilloscope scope = open(bench, profile)) {
      CapturePlan plan = plan(scope, CatchMethod.FORCED_RECORD, 230);
      int samples = 623_457;
      scope.configure(
          new CapturePlan(
              plan.method(), plan.channels(), 1e-6, samples, 0, null, plan.explanation()));
      scope.arm();
      await(scope, AcquisitionState.COMPLETE);
      Capture capture = scope.read();
      assertEquals(samples, capture.time().length());
      assertAsRecorded(bench, profile, capture);
    }
  }

  /** A range for 100 V nominal, and 230 V come. */
  @ParameterizedTest
  @MethodSource("profileNames")
  void whatTheConverterClippedIsFlagged(String profile) {
    try (SimulatedBench bench = SimulatedBench.start(BENCH);
        Oscilloscope scope = open(bench, profile)) {
      scope.configure(plan(scope, CatchMethod.FORCED_RECORD, 100));
      Waveform output = scope.look().output();
      Recorded recorded = Recorded.of(bench, SimulatedInstrument.answeringTo(profile), OUTPUT);
      int clipped = 0;
      for (int i = 0; i < output.length(); i++) {
        if (recorded.clipped()[i]) {
          assertTrue(output.isClippedAt(i), "sample " + i + " of the converter's end");
          clipped++;
        }
      }
      assertTrue(clipped > output.length() / 10, clipped + " samples clipped");
      assertTrue(clipped < output.length(), "not all samples clipped");
      long flagged =
          Stream.iterate(0, i -> i + 1).limit(output.length()).filter(output::isClippedAt).count();
      assertTrue(flagged <= clipped + output.length() / 50, flagged + " of " + clipped);
    }
  }

  @ParameterizedTest
  @MethodSource("quirks")
  void oddWaysChangeNothing(String profile, ScopeQuirk quirk) {
    try (SimulatedBench bench = SimulatedBench.start(BENCH.withQuirks(Set.of(quirk)));
        Oscilloscope scope = open(bench, profile)) {
      scope.configure(plan(scope, CatchMethod.FORCED_RECORD, 230));
      assertAsRecorded(bench, profile, scope.look());
    }
  }

  @ParameterizedTest
  @MethodSource("faults")
  void aFaultyInstrumentGivesASentence(String profile, ScopeFault fault) {
    try (SimulatedBench bench = SimulatedBench.start(BENCH.withFault(fault));
        Oscilloscope scope = open(bench, profile)) {
      ScopeException refused =
          assertThrows(
              ScopeException.class,
              () -> {
                scope.configure(plan(scope, CatchMethod.FORCED_RECORD, 230));
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

  static void assertAsRecorded(SimulatedBench bench, String profile, Capture capture) {
    for (Map.Entry<ChannelRole, Integer> channel : CHANNELS.entrySet()) {
      Recorded recorded =
          Recorded.of(bench, SimulatedInstrument.answeringTo(profile), channel.getValue());
      Waveform read = capture.waveform(channel.getKey()).orElseThrow();
      assertEquals(recorded.volts().length, read.length());
      assertEquals(recorded.firstSampleSeconds(), capture.time().firstSampleSeconds(), 1e-9);
      assertEquals(recorded.intervalSeconds(), capture.time().intervalSeconds(), 1e-15);
      double allowed = resolutionVolts(profiles().named(profile).limits().converterBits());
      for (int i = 0; i < read.length(); i++) {
        assertEquals(recorded.volts()[i], read.voltsAt(i), allowed, "sample " + i);
      }
    }
  }

  /**
   * Half a step of a range of 500 V for codes of fewer bits than the converter of the bench has,
   * else what floats and nine digits leave.
   */
  private static double resolutionVolts(int bits) {
    return bits < 12 ? 1000 / Math.pow(2, bits) * 0.501 : 1e-4;
  }

  static CapturePlan plan(Oscilloscope scope, CatchMethod method, double nominalVolts) {
    Map<ChannelRole, Input> inputs =
        Map.of(
            ChannelRole.OUTPUT,
            Input.ofSupply(OUTPUT, SimulatedBench.PROBE_FACTOR),
            ChannelRole.MAINS,
            Input.ofSupply(MAINS, SimulatedBench.PROBE_FACTOR));
    return CapturePlanner.plan(
        new CaptureRequest(Event.LOSS, nominalVolts, 50, 0.02, inputs, true, method),
        scope.limits());
  }

  private static Oscilloscope open(SimulatedBench bench, String profile) {
    return Oscilloscopes.open(resource(bench, profile), profiles(), profile, CLOCK, STOP);
  }

  private static ResourceName resource(SimulatedBench bench, String profile) {
    return ResourceName.parse(bench.resource(SimulatedInstrument.answeringTo(profile)));
  }

  private static InstrumentProfiles profiles() {
    return InstrumentProfiles.load(ShippedProfilesTest.FOLDER);
  }

  static void await(Oscilloscope scope, AcquisitionState wanted) {
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
