package mainsgap.arming;

import static mainsgap.arming.LoopState.ANALYSED;
import static mainsgap.arming.LoopState.ARMED;
import static mainsgap.arming.LoopState.COMPLETE;
import static mainsgap.arming.LoopState.FAULTED;
import static mainsgap.arming.LoopState.LOGGED;
import static mainsgap.arming.LoopState.PREFLIGHT;
import static mainsgap.arming.LoopState.READING;
import static mainsgap.arming.LoopState.RECOVERING;
import static mainsgap.arming.LoopState.STOPPED;
import static mainsgap.arming.LoopState.TRIGGERED;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.function.Consumer;
import mainsgap.scope.CatchMethod;
import mainsgap.session.Ending;
import mainsgap.session.Remark;
import mainsgap.session.Session;
import mainsgap.signal.Event;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class TrialLoopTest {
  private final Path folder;
  private final LoopFixture loop;

  TrialLoopTest(@TempDir Path folder) {
    this.folder = folder;
    this.loop = new LoopFixture(folder);
  }

  @Test
  void statesReadLikeTheBenchProcedure() {
    LoopEnd end = loop.run(2);

    assertEquals(
        List.of(
            PREFLIGHT,
            ARMED,
            TRIGGERED,
            READING,
            ANALYSED,
            LOGGED,
            RECOVERING,
            ARMED,
            TRIGGERED,
            READING,
            ANALYSED,
            LOGGED,
            COMPLETE),
        loop.states);
    assertEquals(new LoopEnd(LoopEnd.Reason.DONE, 2, "2 trials measured"), end);
    assertEquals(2, loop.session().trials().size());
    assertEquals(Ending.COMPLETE, loop.session().ending());
    assertFalse(loop.bench.armed);
  }

  @Test
  void handIsAskedOnlyOnceTheInstrumentWatches() {
    LoopEnd unused = loop.run(2);

    assertEquals(
        List.of(
            "open the mains switch now",
            "close the mains switch again",
            "open the mains switch now"),
        loop.prompts);
    List<String> calls = loop.bench.calls;
    assertTrue(calls.indexOf("look") < calls.indexOf("arm"), "the live signal comes first");
    assertEquals("state", calls.get(calls.indexOf("OPEN") - 1));
    assertEquals(
        "the mains switch was left open: the unit's output is still live from its battery; closing"
            + " the switch needs a hand",
        loop.notes.get(loop.notes.size() - 1));
  }

  @ParameterizedTest
  @ValueSource(strings = {"configure", "look", "arm", "state", "OPEN", "read"})
  void failureOfAnyStepDisarmsAndLeavesTheLogWhole(String step) {
    loop.bench.failingAt(step);

    LoopEnd end = loop.run(2);

    assertEquals(FAULTED, end.state());
    assertEquals(LoopEnd.Reason.INSTRUMENT, end.reason());
    assertEquals("the link broke at " + step, end.sentence());
    assertEquals("disarm", loop.bench.calls.get(loop.bench.calls.size() - 1));
    assertFalse(loop.bench.armed);
    assertEquals(Ending.FAULTED, loop.session().ending());
    assertEquals(end.sentence(), lastRemark().text());
  }

  @Test
  void instrumentThatCannotBeDisarmedIsAFaultEvenAfterAStop() {
    loop.bench.failingAt("disarm");
    loop.onEntering = stopAt(ARMED);

    LoopEnd end = loop.run(1);

    assertEquals(LoopEnd.Reason.INSTRUMENT, end.reason());
    assertEquals("stopped by the user; and then: the link broke at disarm", end.sentence());
  }

  @Test
  void logThatFailsEndsTheSeriesAndDisarms() {
    loop.bench.on("read", loop::cutLog);

    LoopEnd end = loop.run(1);

    assertEquals(LoopEnd.Reason.SESSION, end.reason());
    assertEquals(FAULTED, end.state());
    assertFalse(loop.bench.armed);
    assertEquals(0, loop.session().trials().size());
  }

  @ParameterizedTest
  @EnumSource(names = {"PREFLIGHT", "ARMED", "TRIGGERED", "READING", "ANALYSED", "LOGGED"})
  void stopAtAnyStateDisarmsAndLeavesMainsAsItIs(LoopState where) {
    loop.onEntering = stopAt(where);

    LoopEnd end = loop.run(2);

    assertEquals(
        new LoopEnd(LoopEnd.Reason.STOPPED, trialsReadBy(where), "stopped by the user"), end);
    assertEquals(STOPPED, loop.states.get(loop.states.size() - 1));
    assertFalse(loop.bench.armed);
    assertFalse(loop.bench.calls.contains("CLOSE"), "mains stays as it is");
    assertEquals(trialsReadBy(where), loop.session().trials().size());
    assertEquals(Ending.STOPPED, loop.session().ending());
  }

  @Test
  void stopWhileTheUnitSettlesKeepsTheTrial() {
    loop.onEntering = stopAt(RECOVERING);

    LoopEnd end = loop.run(2);

    assertEquals(LoopEnd.Reason.STOPPED, end.reason());
    assertEquals(1, loop.session().trials().size());
  }

  @Test
  void refusedTrialIsLoggedAndRepeated() {
    loop.outcomes = number -> number == 1 ? LoopFixture.A_REFUSAL : LoopFixture.A_RESULT;

    LoopEnd end = loop.run(1);

    assertEquals(new LoopEnd(LoopEnd.Reason.DONE, 1, "1 trial measured"), end);
    assertEquals(
        List.of(true, false), loop.session().trials().stream().map(t -> t.isRefused()).toList());
  }

  @Test
  void refusedTrialsAreRepeatedUpToTheLimit() {
    loop.outcomes = number -> LoopFixture.A_REFUSAL;

    LoopEnd end = loop.run(1);

    assertEquals(LoopEnd.Reason.REPEATS_SPENT, end.reason());
    assertEquals(
        "gave up after 3 attempts without a measurement (0 trials measured); the last: refused: no"
            + " event in the capture",
        end.sentence());
    assertEquals(3, loop.session().trials().size());
  }

  @Test
  void trialWithoutReturnIsAResultAndNotRepeated() {
    LoopEnd end = loop.run(1);

    assertEquals(1, end.measured());
    assertEquals(1, Collections.frequency(loop.bench.calls, "arm"));
  }

  @Test
  void disarmsWhenNoTriggerComesAndGivesUpAtTheLimit() {
    loop.bench.neverTriggering();

    LoopEnd end = loop.run(1);

    assertEquals(LoopEnd.Reason.REPEATS_SPENT, end.reason());
    assertEquals(0, end.measured());
    assertEquals(3, Collections.frequency(loop.bench.calls, "arm"));
    assertEquals(
        3,
        loop.session().remarks().stream()
            .filter(remark -> remark.kind() == Remark.Kind.NO_CAPTURE)
            .count());
    assertTrue(
        loop.notes.contains(
            "no trigger came within 60 s: was the mains switch moved, and does the probe see the"
                + " output?"));
    assertFalse(loop.bench.armed);
  }

  @Test
  void forcedRecordIsAwaitedAsAWhole() {
    loop.method = CatchMethod.FORCED_RECORD;

    LoopEnd end = loop.run(1);

    assertEquals(LoopEnd.Reason.DONE, end.reason());
    assertEquals(
        List.of(PREFLIGHT, ARMED, TRIGGERED, READING, ANALYSED, LOGGED, COMPLETE), loop.states);
  }

  @Test
  void forcedRecordThatNeverEndsIsAFault() {
    loop.method = CatchMethod.FORCED_RECORD;
    loop.bench.neverTriggering();

    LoopEnd end = loop.run(1);

    assertEquals(LoopEnd.Reason.INSTRUMENT, end.reason());
    assertEquals(
        "the record of 1 s was not complete within 16 s: look at the instrument's screen, and plan a"
            + " shorter record if it is slow",
        end.sentence());
  }

  @Test
  void nothingIsArmedWhenTheRigIsNotRight() {
    loop.bench.live = Signals.output(Signals.sine(23, 50));

    LoopEnd end = loop.run(1);

    assertEquals(LoopEnd.Reason.RIG_NOT_RIGHT, end.reason());
    assertTrue(end.sentence().contains("is the probe factor of 100 right?"), end.sentence());
    assertFalse(loop.bench.calls.contains("arm"));
    assertEquals(List.of(PREFLIGHT, FAULTED), loop.states);
  }

  @Test
  void unknownSupplyIsSaidOnce() {
    LoopEnd unused = loop.run(3);

    assertEquals(
        1, loop.notes.stream().filter(note -> note.startsWith("the supply is unknown")).count());
  }

  @Test
  void mainsThatDoesNotComeBackIsSaid() {
    loop.bench.withMainsChannel().on("OPEN", () -> loop.bench.handObeys = true);
    loop.bench.on("CLOSE", () -> loop.bench.handObeys = false);

    LoopEnd end = loop.run(2);

    assertEquals(LoopEnd.Reason.RIG_NOT_RIGHT, end.reason());
    assertEquals(
        "mains is not back 30 s after it was asked for: look at the switch, the fuse and the mains"
            + " probe",
        end.sentence());
    assertEquals(1, loop.session().trials().size());
  }

  @Test
  void mainsThatIsBackLetsTheSeriesGoOn() {
    loop.bench.withMainsChannel();

    assertEquals(LoopEnd.Reason.DONE, loop.run(3).reason());
    assertFalse(loop.notes.stream().anyMatch(note -> note.contains("unknown")));
  }

  @Test
  void wordToProceedEndsTheSettlingTime() {
    loop.onEntering = state -> {};
    LoopEnd unhurried = loop.run(2);
    Duration settled = longestSettling();

    assertEquals(LoopEnd.Reason.DONE, unhurried.reason());
    assertTrue(settled.compareTo(Duration.ofSeconds(9)) > 0, "settled " + settled);

    LoopFixture hurried = new LoopFixture(folder.resolve("hurried"));
    hurried.bench.on("look", hurried.proceed::give);
    LoopEnd unused = hurried.run(2);
    assertFalse(hurried.progress.stream().anyMatch(news -> news.what().contains("settle")));
  }

  @Test
  void restorationNeedsTheSwitchOpenedFirst() {
    loop.event = Event.RESTORATION;
    loop.bench.withMainsChannel();

    LoopEnd end = loop.run(2);

    assertEquals(LoopEnd.Reason.DONE, end.reason());
    assertEquals(
        List.of("OPEN", "CLOSE", "OPEN", "CLOSE"),
        loop.bench.calls.stream().filter(c -> c.equals("OPEN") || c.equals("CLOSE")).toList());
  }

  @Test
  void measurementThatFailsKeepsTheCapture() {
    loop.outcomes =
        number -> {
          if (number == 1) {
            throw new ArithmeticException("singular");
          }
          return LoopFixture.A_RESULT;
        };

    LoopEnd end = loop.run(1);

    assertEquals(LoopEnd.Reason.DONE, end.reason());
    assertTrue(loop.session().trials().get(0).sentence().contains("singular"));
  }

  @Test
  void faceThatFailsDoesNotCostTheTrial() {
    loop.onEntering =
        state -> {
          throw new IllegalStateException("no screen");
        };

    assertEquals(LoopEnd.Reason.DONE, loop.run(1).reason());
    assertEquals(1, loop.session().trials().size());
  }

  @Test
  void promptThatFailsDoesNotCostTheTrial() {
    loop.onPrompt =
        prompt -> {
          throw new IllegalStateException("no screen");
        };

    assertEquals(LoopEnd.Reason.DONE, loop.run(1).reason());
    assertEquals(1, loop.session().trials().size());
  }

  private Consumer<LoopState> stopAt(LoopState where) {
    return state -> {
      if (state == where) {
        loop.stop.request();
      }
    };
  }

  private static int trialsReadBy(LoopState state) {
    return EnumSet.of(READING, ANALYSED, LOGGED).contains(state) ? 1 : 0;
  }

  private Remark lastRemark() {
    Session session = loop.session();
    return session.remarks().get(session.remarks().size() - 1);
  }

  private Duration longestSettling() {
    return loop.progress.stream()
        .filter(news -> news.what().contains("settle"))
        .map(Progress::elapsed)
        .max(Duration::compareTo)
        .orElse(Duration.ZERO);
  }
}
