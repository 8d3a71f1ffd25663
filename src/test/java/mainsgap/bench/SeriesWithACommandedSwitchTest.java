package mainsgap.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import mainsgap.arming.LoopState;
import mainsgap.arming.Prompt;
import mainsgap.bench.SeriesEnd.Kind;
import mainsgap.session.Remark;
import mainsgap.signal.Event;
import mainsgap.simulation.SimulatedBench;
import mainsgap.simulation.SimulatedBenchSettings;
import mainsgap.simulation.SimulatedInstrument;
import mainsgap.simulation.SimulatedUnit;
import mainsgap.simulation.SwitchFault;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.waiting.StopRequest;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Whole series over the wire whose mains the program switches, unattended, and all that fails. */
class SeriesWithACommandedSwitchTest {
  private final SimulatedBench bench =
      SimulatedBench.start(SimulatedBenchSettings.of(SimulatedUnit.STANDBY, 7));
  private final Requests requests;
  private final Heard heard = new Heard();
  private final StopRequest stop = new StopRequest();

  SeriesWithACommandedSwitchTest(@TempDir Path folder) {
    requests = new Requests(folder);
    Path unused = requests.write("relay.toml", Pages.examplesOf("serial-relay.md").get(0));
  }

  @AfterEach
  void closeBench() {
    bench.close();
  }

  @ParameterizedTest
  @CsvSource({
    "scpi-output, LOSS, TIME_OUT_TRIGGER",
    "scpi-output, LOSS, FORCED_RECORD",
    "scpi-output, RESTORATION, FORCED_RECORD",
    "serial-relay, LOSS, TIME_OUT_TRIGGER",
    "serial-relay, LOSS, FORCED_RECORD",
    "serial-relay, RESTORATION, FORCED_RECORD"
  })
  void seriesRunsUnattendedAndLeavesMainsOff(String kind, Event event, CatchWish catching) {
    SeriesEnd end = run(request(kind, true, event, catching, 3, SeriesPlan.NONE));

    assertEquals(Kind.COMPLETE, end.kind(), end.sentence());
    assertEquals(3, end.figures().measured());
    end.trials().forEach(trial -> assertEquals(Outcome.Kind.MEASURED, trial.outcome().kind()));
    assertEquals(List.of(), heard.prompts);
    assertFalse(bench.isMainsClosed());
    int moves = event == Event.LOSS ? 5 : 7;
    assertEquals(moves, deeds().size());
    assertTrue(deeds().stream().allMatch(deed -> deed.endsWith(": done")), "" + deeds());
    assertTrue(
        requests.session().header().rig().getOrDefault("mains switch", "").contains("red button"));
  }

  @Test
  void nextSeriesClosesMainsBeforeItsFirstLook() {
    SeriesRequest request =
        request("serial-relay", true, Event.LOSS, CatchWish.AUTOMATIC, 1, SeriesPlan.NONE);
    assertEquals(Kind.COMPLETE, run(request).kind());
    assertFalse(bench.isMainsClosed());

    SeriesEnd end = run(requests.goingOn(request));

    assertEquals(Kind.COMPLETE, end.kind(), end.sentence());
    assertTrue(deeds().get(1).contains("close"), "" + deeds());
  }

  @Test
  void anglesThatThePlanFixesAreTheOnesThatAreMeasured() {
    List<Double> angles = List.of(30.0, 135.0, 250.0);
    SeriesPlan plan = new SeriesPlan(null, null, null, null, null, null, null, null, angles);

    SeriesEnd end = run(request("scpi-output", true, Event.LOSS, CatchWish.AUTOMATIC, 3, plan));

    assertEquals(Kind.COMPLETE, end.kind(), end.sentence());
    for (int i = 0; i < angles.size(); i++) {
      Measured measured = (Measured) end.trials().get(i).outcome();
      assertEquals(angles.get(i), measured.pointOnWaveDegrees(), 2, "trial " + (i + 1));
    }
  }

  @Test
  void closingWaitsForTheWordOfAPerson() {
    Series series =
        Series.of(
            request("scpi-output", false, Event.LOSS, CatchWish.AUTOMATIC, 2, SeriesPlan.NONE));
    SeriesListener person =
        new SeriesListener() {
          @Override
          public void prompted(Prompt prompt) {
            heard.prompted(prompt);
            series.letMainsClose();
          }
        };

    SeriesEnd end = series.run(person, stop);

    assertEquals(Kind.COMPLETE, end.kind(), end.sentence());
    assertEquals(1, heard.prompts.size());
    assertTrue(heard.prompts.get(0).contains("nobody touches the rig"), "" + heard.prompts);
  }

  @Test
  void withNobodyToGiveTheWordNothingIsOpened() {
    Series series =
        Series.of(
            request("scpi-output", false, Event.LOSS, CatchWish.AUTOMATIC, 2, SeriesPlan.NONE));
    series.withholdConsent("nobody is there");

    SeriesEnd end = series.run(heard, stop);

    assertEquals(Kind.WRONG_USE, end.kind());
    assertEquals("nobody is there", end.sentence());
    assertTrue(bench.isMainsClosed());
  }

  /** From the moment of the fault on the switch neither moves nor confirms: mains stays on. */
  @ParameterizedTest
  @CsvSource({
    "scpi-output, SILENT, gave no whole reply",
    "scpi-output, ANSWERS_WITH_ERROR, -221",
    "scpi-output, STUCK, says that its output is on",
    "serial-relay, SILENT, answered nothing where",
    "serial-relay, ANSWERS_WITH_ERROR, answered 15 where 06 is expected"
  })
  void switchThatFailsWhileMainsIsOnIsSaidLoudly(String kind, SwitchFault fault, String words) {
    SeriesEnd end = runBreakingAt(LoopState.ARMED, kind, () -> bench.setFault(fault));

    assertEquals(Kind.INSTRUMENT_FAILED, end.kind());
    assertTrue(end.sentence().contains(words), end.sentence());
    assertTrue(end.sentence().contains("THE MAINS SWITCH COULD NOT BE OPENED"), end.sentence());
    assertTrue(end.sentence().contains("red button"), end.sentence());
    assertTrue(bench.isMainsClosed());
    assertEquals(3, deeds().size(), "one as planned, two at the end: " + deeds());
  }

  @ParameterizedTest
  @ValueSource(strings = {"scpi-output", "serial-relay"})
  void linkThatDiesWhileMainsIsOnIsSaidLoudly(String kind) {
    SeriesEnd end = runBreakingAt(LoopState.ARMED, kind, bench::cutSwitchLinks);

    assertEquals(Kind.INSTRUMENT_FAILED, end.kind());
    assertTrue(end.sentence().contains("THE MAINS SWITCH COULD NOT BE OPENED"), end.sentence());
    assertTrue(bench.isMainsClosed());
  }

  /** It was confirmed open before the link died, and stays so. */
  @ParameterizedTest
  @ValueSource(strings = {"scpi-output", "serial-relay"})
  void linkThatDiesWhileMainsIsOffKeepsTheTrialAndMainsOff(String kind) {
    SeriesEnd end = runBreakingAt(LoopState.LOGGED, kind, bench::cutSwitchLinks);

    assertEquals(Kind.INSTRUMENT_FAILED, end.kind());
    assertTrue(end.sentence().contains("failed to close the mains switch"), end.sentence());
    assertEquals(1, end.trials().size());
    assertFalse(bench.isMainsClosed());
  }

  /** Ctrl-C, from a thread of its own, in each state: mains is off and was not closed by us. */
  @ParameterizedTest
  @EnumSource(
      names = {"PREFLIGHT", "ARMED", "TRIGGERED", "READING", "ANALYSED", "LOGGED", "RECOVERING"})
  void emergencyOffFromAnotherThreadInAnyStateLeavesMainsOff(LoopState where) {
    Thread presser = new Thread(stop::request, "presser");

    SeriesEnd end =
        runBreakingAt(
            where,
            "serial-relay",
            () -> {
              presser.start();
              join(presser);
            });

    assertEquals(Kind.STOPPED, end.kind(), end.sentence());
    assertFalse(bench.isMainsClosed());
    assertTrue(deeds().stream().noneMatch(deed -> deed.contains("to close")), "" + deeds());
  }

  @Test
  void sourceThatIsNotThereIsOneSentenceAndNothingIsArmed() {
    bench.cutSwitchLinks();

    SeriesEnd end =
        run(request("scpi-output", true, Event.LOSS, CatchWish.AUTOMATIC, 1, SeriesPlan.NONE));

    assertEquals(Kind.INSTRUMENT_FAILED, end.kind());
    assertTrue(end.sentence().contains("does not tell where the mains switch stands"));
    assertFalse(heard.wasIn(LoopState.ARMED));
  }

  private SeriesEnd run(SeriesRequest request) {
    return Series.of(request).run(heard, stop);
  }

  private SeriesEnd runBreakingAt(LoopState where, String kind, Runnable breaking) {
    SeriesListener breaker =
        new SeriesListener() {
          private boolean done;

          @Override
          public void entered(LoopState state) {
            if (state == where && !done) {
              done = true;
              breaking.run();
            }
          }
        };
    return Series.of(
            request(kind, true, Event.LOSS, CatchWish.TIME_OUT_TRIGGER, 2, SeriesPlan.NONE))
        .run(breaker, stop);
  }

  private SeriesRequest request(
      String kind,
      boolean restoresByItself,
      Event event,
      CatchWish catching,
      int trials,
      SeriesPlan plan) {
    String drive =
        kind.equals("scpi-output")
            ? "resource = \""
                + bench.sourceResource()
                + "\"\nopen-at-angle = [\":OUTP:OFF:ANGL {angle}\"]\n"
            : "resource = \"" + bench.relayResource() + "\"\nrelay = \"relay.toml\"\n";
    Path rig =
        requests.rigWith(
            "[mains-switch]\nkind = \""
                + kind
                + "\"\nemergency-stop = \"red button\"\nrestores-by-itself = "
                + restoresByItself
                + "\n"
                + drive);
    return requests.planned(
        event,
        plan,
        requests.real(bench.resource(SimulatedInstrument.TEN_FIELD_SCOPE), trials, catching, rig));
  }

  private List<String> deeds() {
    return requests.session().remarks().stream()
        .filter(remark -> remark.kind() == Remark.Kind.MAINS_SWITCH)
        .map(Remark::text)
        .toList();
  }

  private static void join(Thread thread) {
    try {
      thread.join();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
