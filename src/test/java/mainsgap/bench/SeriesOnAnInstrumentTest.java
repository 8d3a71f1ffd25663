package mainsgap.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import mainsgap.arming.LoopState;
import mainsgap.bench.SeriesEnd.Kind;
import mainsgap.session.Ending;
import mainsgap.session.Remark;
import mainsgap.session.Session;
import mainsgap.simulation.ScopeFault;
import mainsgap.simulation.SimulatedBench;
import mainsgap.simulation.SimulatedBenchSettings;
import mainsgap.simulation.SimulatedInstrument;
import mainsgap.simulation.SimulatedUnit;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.waiting.StopRequest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A series on an instrument that is only known by its resource name; its mains opens by itself. */
class SeriesOnAnInstrumentTest {
  private static final String STRICT = "scpi-1999-digitizer";
  private static final String TEN_FIELD = "ten-field-preamble";

  private final Requests requests;
  private final Heard heard = new Heard();
  private final StopRequest stop = new StopRequest();

  SeriesOnAnInstrumentTest(@TempDir Path folder) {
    requests = new Requests(folder);
  }

  @ParameterizedTest
  @CsvSource({
    TEN_FIELD + ", TIME_OUT_TRIGGER",
    TEN_FIELD + ", FORCED_RECORD",
    STRICT + ", FORCED_RECORD",
    "named-value-preamble, TIME_OUT_TRIGGER",
    "named-value-preamble, FORCED_RECORD",
    "values-in-volts, TIME_OUT_TRIGGER",
    "values-in-volts, FORCED_RECORD",
    "single-scale-queries, FORCED_RECORD"
  })
  void everyProfileCatchesInEveryWayThatItOffers(String profile, CatchWish catching) {
    try (SimulationServer server = SimulationServer.start("standby", 7)) {
      String resource = server.resource(profile);

      SeriesEnd end =
          Series.of(requests.real(resource, 2, catching, requests.rigFor(profile, 100)))
              .run(heard, stop);

      assertEquals(Kind.COMPLETE, end.kind(), end.sentence());
      assertEquals(2, end.trials().size());
      assertEquals(Outcome.Kind.MEASURED, end.trials().get(0).outcome().kind());
    }
  }

  @Test
  void cautionsRigAndConditionsAreInTheSession() {
    try (SimulationServer server = SimulationServer.start("standby", 7)) {
      String resource = server.resource(TEN_FIELD);
      SeriesEnd end = Series.of(requests.real(resource, 1, CatchWish.AUTOMATIC)).run(heard, stop);
      assertEquals(Kind.COMPLETE, end.kind(), end.sentence());
    }

    Session session = requests.session();
    assertEquals("Invented Lumengrove 600", session.header().unit());
    assertEquals(
        "output, probe factor 100, CAT III 600 V", session.header().rig().get("channel 1"));
    assertEquals("60 W, resistive", session.header().conditions().get("load"));
    assertEquals("21 degrees", session.header().conditions().get("room"));
    assertEquals(
        List.of(Remark.Kind.CAUTIONS_READ, Remark.Kind.SERIES_STARTED, Remark.Kind.COMPLETE),
        session.remarks().stream().map(Remark::kind).toList());
  }

  /** Gaps of the line-interactive unit are 2 to 6 ms: a window of 2.94 ms sees most, 21 ms none. */
  @ParameterizedTest
  @CsvSource({"WINDOW_TRIGGER, COMPLETE", "DROPOUT_TRIGGER, NOTHING_MEASURED"})
  void outputAloneIsCaughtOutsideOfTheBlindZoneAndMissedInIt(CatchWish catching, Kind kind) {
    try (SimulationServer server = SimulationServer.start("line-interactive", 7)) {
      SeriesRequest request =
          requests.real(server.resource(TEN_FIELD), 1, catching, requests.rigOfOutput(TEN_FIELD));

      SeriesEnd end =
          Series.of(kind == Kind.COMPLETE ? request : requests.impatient(request)).run(heard, stop);

      assertEquals(kind, end.kind(), end.sentence());
      assertTrue(String.join(" ", heard.plan).contains("Blind zone: a gap of"));
    }
  }

  @Test
  void instrumentWithoutATimeOutTriggerSaysSo() {
    try (SimulationServer server = SimulationServer.start("standby", 7)) {
      String resource = server.resource(STRICT);

      SeriesEnd end =
          Series.of(requests.real(resource, 1, CatchWish.TIME_OUT_TRIGGER)).run(heard, stop);

      assertEquals(Kind.WRONG_USE, end.kind());
      assertEquals(
          "this instrument has no time-out trigger in its profile: catch the loss by a forced"
              + " record",
          end.sentence());
    }
  }

  /** Whether it is told the probe factor, or the program multiplies: the volts are wrong alike. */
  @ParameterizedTest
  @ValueSource(strings = {TEN_FIELD, STRICT})
  void wrongProbeFactorIsFoundBeforeAnythingIsArmed(String profile) {
    try (SimulationServer server = SimulationServer.start("standby", 7)) {
      String resource = server.resource(profile);

      SeriesEnd end =
          Series.of(requests.real(resource, 1, CatchWish.AUTOMATIC, requests.rigFor(profile, 50)))
              .run(heard, stop);

      assertEquals(Kind.NOTHING_MEASURED, end.kind());
      assertTrue(end.sentence().contains("is the probe factor of 50 right?"), end.sentence());
      assertFalse(heard.wasIn(LoopState.ARMED));
    }
  }

  /** A range for 100 V nominal is planned, and 230 V come. */
  @ParameterizedTest
  @ValueSource(strings = {TEN_FIELD, STRICT})
  void clippingIsFoundBeforeAnythingIsArmed(String profile) {
    try (SimulationServer server = SimulationServer.start("standby", 7)) {
      String resource = server.resource(profile);

      SeriesEnd end =
          Series.of(
                  requests.ofNominal(
                      100,
                      requests.real(
                          resource, 1, CatchWish.AUTOMATIC, requests.rigFor(profile, 100))))
              .run(heard, stop);

      assertEquals(Kind.NOTHING_MEASURED, end.kind());
      assertTrue(end.sentence().contains("is clipped in"), end.sentence());
      assertFalse(heard.wasIn(LoopState.ARMED));
    }
  }

  @ParameterizedTest
  @CsvSource({
    "NEVER_TRIGGERS, NOTHING_MEASURED, no trigger came",
    "CLOSES_IN_MID_BLOCK, INSTRUMENT_FAILED, closed",
    "SHORT_BLOCK, INSTRUMENT_FAILED, block",
    "TEXT_FOR_NUMBER, INSTRUMENT_FAILED, number",
    "ANSWERS_WITH_ERROR, INSTRUMENT_FAILED, -221",
    "CLIPPING_RANGE, INSTRUMENT_FAILED, range"
  })
  void faultOfTheInstrumentIsOneSentenceAndTheLogIsWhole(ScopeFault fault, Kind kind, String word) {
    SimulatedBenchSettings settings =
        SimulatedBenchSettings.of(SimulatedUnit.STANDBY, 7).withAutonomousMains().withFault(fault);
    try (SimulatedBench bench = SimulatedBench.start(settings)) {
      SeriesRequest request =
          requests.impatient(
              requests.real(
                  bench.resource(SimulatedInstrument.TEN_FIELD_SCOPE),
                  1,
                  CatchWish.TIME_OUT_TRIGGER,
                  requests.rigFor(TEN_FIELD, 100)));

      SeriesEnd end = Series.of(request).run(heard, stop);

      assertEquals(kind, end.kind(), end.sentence());
      assertTrue(end.sentence().contains(word), end.sentence());
      if (end.session() != null) {
        Ending ending = kind == Kind.NOTHING_MEASURED ? Ending.COMPLETE : Ending.FAULTED;
        assertEquals(ending, requests.session().ending());
      }
    }
  }

  @Test
  void nobodyListeningIsOneSentence() {
    String resource;
    try (SimulationServer server = SimulationServer.start("standby", 7)) {
      resource = server.resource(STRICT);
    }

    SeriesEnd end = Series.of(requests.real(resource, 1, CatchWish.AUTOMATIC)).run(heard, stop);

    assertEquals(Kind.INSTRUMENT_FAILED, end.kind());
    assertTrue(end.sentence().contains("cannot be reached"), end.sentence());
  }
}
