package mainsgap.arming;

import static mainsgap.arming.LoopState.ANALYSED;
import static mainsgap.arming.LoopState.ARMED;
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
import java.util.List;
import mainsgap.session.Ending;
import mainsgap.session.Remark;
import mainsgap.signal.Event;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The safety rules of a commanded switch, in each state and at each step that fails. */
class CommandedLoopTest {
  private static final String LIVE =
      "the program opened the mains switch and leaves it open: the unit's output is still live from"
          + " its battery; closing the switch needs a person";

  private final LoopFixture loop;
  private final FakeLine line;

  CommandedLoopTest(@TempDir Path folder) {
    loop = new LoopFixture(folder);
    loop.bench.withMainsChannel();
    line = new FakeLine(loop.bench);
    line.says = SwitchPosition.CLOSED;
    closedBy(ClosedBy.PROGRAM_ON_A_WORD);
    // somebody at the bench, who answers each prompt for the word
    loop.onPrompt = prompt -> loop.consent.give();
  }

  private void closedBy(ClosedBy closedBy) {
    loop.mains = new CommandedSwitch(line, closedBy, "red button", loop.clock);
  }

  @Test
  void opensOnlyWhileTheInstrumentIsArmedAndClosesOnAWord() {
    line.onOpening = () -> assertTrue(loop.bench.armed, "a planned opening while armed");

    LoopEnd end = loop.run(3);

    assertEquals(LoopEnd.Reason.DONE, end.reason(), end.sentence());
    assertEquals(List.of("open", "close", "open", "close", "open"), line.told);
    assertEquals(2, loop.prompts.size(), "one word for each closing");
    assertEquals(LIVE, loop.notes.get(loop.notes.size() - 1));
    assertFalse(loop.bench.mainsClosed);
  }

  @Test
  void everyMoveIsInTheSession() {
    LoopEnd end = loop.run(2);

    assertEquals(LoopEnd.Reason.DONE, end.reason());
    assertEquals(
        List.of(
            "the fake switch was told to open (as planned): done",
            "the fake switch was told to close (on the word of a person): done",
            "the fake switch was told to open (as planned): done"),
        deeds());
    assertEquals(Ending.COMPLETE, loop.session().ending());
  }

  @Test
  void rigThatRestoresByItselfAsksNobodyAndSaysSo() {
    closedBy(ClosedBy.PROGRAM);

    LoopEnd end = loop.run(2);

    assertEquals(LoopEnd.Reason.DONE, end.reason());
    assertEquals(List.of(), loop.prompts);
    assertEquals(
        "the fake switch was told to close (by itself, as the rig file allows): done",
        deeds().get(1));
  }

  @Test
  void wordThatWasGivenBeforeItWasAskedForDoesNotCount() {
    loop.onPrompt = prompt -> {};
    loop.onEntering = state -> loop.consent.give();

    LoopEnd end = loop.run(2);

    assertEquals(LoopEnd.Reason.RIG_NOT_RIGHT, end.reason());
    assertEquals(
        "nobody gave the word to close the mains switch within 40 s: mains stays off; go on with the"
            + " session when somebody is there",
        end.sentence());
    assertFalse(line.told.contains("close"));
    assertEquals(1, loop.session().trials().size());
  }

  @Test
  void whereNobodyCanGiveTheWordTheSeriesEndsAtOnce() {
    loop.onPrompt = prompt -> loop.consent.withhold("standard input has ended");

    LoopEnd end = loop.run(2);

    assertEquals(LoopEnd.Reason.RIG_NOT_RIGHT, end.reason());
    assertEquals("standard input has ended", end.sentence());
    assertFalse(line.told.contains("close"));
  }

  @ParameterizedTest
  @EnumSource(
      names = {"PREFLIGHT", "ARMED", "TRIGGERED", "READING", "ANALYSED", "LOGGED", "RECOVERING"})
  void stopInAnyStateLeavesMainsOff(LoopState where) {
    loop.onEntering =
        state -> {
          if (state == where) {
            loop.stop.request();
          }
        };

    LoopEnd end = loop.run(2);

    assertEquals(LoopEnd.Reason.STOPPED, end.reason());
    assertEquals(STOPPED, loop.states.get(loop.states.size() - 1));
    assertFalse(loop.bench.mainsClosed, "mains is off");
    assertFalse(line.told.contains("close"), "and was never closed");
    assertEquals(LIVE, loop.notes.get(loop.notes.size() - 1));
    assertEquals(Ending.STOPPED, loop.session().ending());
  }

  @ParameterizedTest
  @ValueSource(strings = {"configure", "look", "arm", "state", "read"})
  void faultOfAnyStepLeavesMainsOffAndTheInstrumentDisarmed(String step) {
    loop.bench.failingAt(step);

    LoopEnd end = loop.run(2);

    assertEquals(LoopEnd.Reason.INSTRUMENT, end.reason());
    assertFalse(loop.bench.mainsClosed);
    assertFalse(loop.bench.armed);
    assertEquals(Ending.FAULTED, loop.session().ending());
  }

  @ParameterizedTest
  @EnumSource(names = {"ARMED", "TRIGGERED", "READING", "ANALYSED", "LOGGED", "RECOVERING"})
  void logThatFailsInAnyStateLeavesMainsOff(LoopState where) {
    loop.onEntering =
        state -> {
          if (state == where) {
            loop.cutLog();
          }
        };

    LoopEnd end = loop.run(2);

    assertEquals(LoopEnd.Reason.SESSION, end.reason(), end.sentence());
    assertFalse(loop.bench.mainsClosed);
    assertFalse(loop.bench.armed);
  }

  @Test
  void switchThatFailsOnceIsToldAgainAtTheEnd() {
    line.failures = 1;

    LoopEnd end = loop.run(2);

    assertEquals(LoopEnd.Reason.MAINS_SWITCH, end.reason());
    assertEquals(FAULTED, end.state());
    assertEquals(
        "the fake switch failed to open the mains switch: its link is dead", end.sentence());
    assertEquals(List.of("failed to open", "open"), line.told);
    assertFalse(loop.bench.mainsClosed);
    assertEquals(LIVE, loop.notes.get(loop.notes.size() - 1));
  }

  @Test
  void switchThatCannotBeOpenedAtTheEndIsSaidLoudlyAndLogged() {
    loop.onEntering =
        state -> {
          if (state == PREFLIGHT) {
            line.failures = 100;
            loop.stop.request();
          }
        };

    LoopEnd end = loop.run(2);

    assertEquals(LoopEnd.Reason.MAINS_SWITCH, end.reason());
    assertEquals(
        "stopped by the user; and then: THE MAINS SWITCH COULD NOT BE OPENED, mains may still be on:"
            + " open it by hand now, or use the emergency stop (red button); the fake switch failed:"
            + " its link is dead",
        end.sentence());
    assertFalse(loop.notes.contains(LIVE), "nobody says that it was opened");
    assertFalse(loop.bench.armed);
    assertEquals(2, deeds().size());
    assertEquals(Ending.FAULTED, loop.session().ending());
  }

  @Test
  void seriesThatRanThroughAndCannotBeLeftOffIsAFault() {
    loop.event = Event.RESTORATION;
    loop.onEntering =
        state -> {
          if (state == LOGGED) {
            line.failures = 100;
          }
        };

    LoopEnd end = loop.run(1);

    assertEquals(LoopEnd.Reason.MAINS_SWITCH, end.reason());
    assertTrue(end.sentence().startsWith("THE MAINS SWITCH COULD NOT BE OPENED"), end.sentence());
    assertEquals(1, end.measured());
    assertEquals(1, loop.session().trials().size());
  }

  @Test
  void mainsThatIsOffAtTheStartIsClosedOnAWordAndSettlesBeforeTheFirstLook() {
    loop.bench.mainsClosed = false;
    line.says = SwitchPosition.OPEN;

    LoopEnd end = loop.run(1);

    assertEquals(LoopEnd.Reason.DONE, end.reason(), end.sentence());
    assertEquals(List.of("close", "open"), line.told);
    assertEquals(
        List.of(PREFLIGHT, RECOVERING, ARMED, TRIGGERED, READING, ANALYSED, LOGGED),
        loop.states.subList(0, 7));
    assertTrue(loop.progress.stream().anyMatch(news -> news.what().contains("settle")));
  }

  @ParameterizedTest
  @CsvSource({"true, open", "false, close open"})
  void switchThatDoesNotTellIsLookedAtInTheSignal(boolean closed, String told) {
    line.says = SwitchPosition.UNKNOWN;
    loop.bench.mainsClosed = closed;

    LoopEnd end = loop.run(1);

    assertEquals(LoopEnd.Reason.DONE, end.reason(), end.sentence());
    assertEquals(List.of(told.split(" ")), line.told);
  }

  @Test
  void restorationOpensFirstAndIsLeftOffAtTheEnd() {
    loop.event = Event.RESTORATION;

    LoopEnd end = loop.run(2);

    assertEquals(LoopEnd.Reason.DONE, end.reason(), end.sentence());
    assertEquals(List.of("open", "close", "open", "close", "open"), line.told);
    assertFalse(loop.bench.mainsClosed);
    assertEquals(LIVE, loop.notes.get(loop.notes.size() - 1));
  }

  @Test
  void restorationIsAwaitedForMinutesWithItsOwnWords() {
    loop.event = Event.RESTORATION;
    loop.pace = paceWaiting(Duration.ofMinutes(6), Duration.ZERO);
    loop.bench.neverTriggering();

    LoopEnd end = loop.run(1);

    assertEquals(LoopEnd.Reason.REPEATS_SPENT, end.reason());
    assertTrue(
        loop.progress.stream()
            .anyMatch(
                news ->
                    news.what().equals("the unit to go back to mains, which it checks first")
                        && news.elapsed().compareTo(Duration.ofMinutes(5)) > 0));
    assertTrue(
        loop.notes.stream()
            .anyMatch(
                note -> note.contains("no trigger came within 360 s") && note.contains("minutes")));
  }

  @ParameterizedTest
  @EnumSource
  void pauseIsSpentWithMainsOn(Event event) {
    loop.event = event;
    loop.pace = paceWaiting(Duration.ofSeconds(60), Duration.ofSeconds(30));
    loop.onProgress =
        news -> {
          if (news.what().contains("pause")) {
            assertTrue(loop.bench.mainsClosed, "mains is on in the pause");
          }
        };

    LoopEnd end = loop.run(2);

    assertEquals(LoopEnd.Reason.DONE, end.reason(), end.sentence());
    assertTrue(loop.progress.stream().anyMatch(news -> news.what().contains("pause")));
  }

  @Test
  void openingsAreDelayedWithinWholeCyclesAndTheSeedRepeatsThem() {
    loop.timing = new SwitchTiming(1000, List.of(), 5);

    LoopEnd end = loop.run(3);

    assertEquals(LoopEnd.Reason.DONE, end.reason());
    List<Duration> limits =
        loop.progress.stream()
            .filter(news -> news.what().equals("a random delay"))
            .map(Progress::limit)
            .distinct()
            .toList();
    assertEquals(3, limits.size());
    // 1000 cycles of 50 Hz are 20 s
    limits.forEach(limit -> assertTrue(limit.compareTo(Duration.ofSeconds(20)) < 0, "" + limit));
    PointOnWave again = new PointOnWave(loop.timing, loop.task());
    limits.forEach(limit -> assertEquals(limit, again.nextDelay()));
  }

  @Test
  void anglesComeInTurn() {
    line.choosesAngle = true;
    loop.timing = new SwitchTiming(0, List.of(0.0, 90.0), 0);

    LoopEnd end = loop.run(3);

    assertEquals(LoopEnd.Reason.DONE, end.reason());
    assertEquals(
        List.of("open at 0.0", "close", "open at 90.0", "close", "open at 0.0"), line.told);
    assertTrue(deeds().get(2).contains("at 90.0 degrees"), deeds().get(2));
  }

  @Test
  void handsSwitchIsNeverMovedByTheProgram() {
    loop.mains = loop.bench;

    LoopEnd end = loop.run(2);

    assertEquals(LoopEnd.Reason.DONE, end.reason());
    assertEquals(List.of(), line.told);
    assertEquals(1, Collections.frequency(loop.prompts, "close the mains switch again"));
  }

  private static Pace paceWaiting(Duration triggerWait, Duration pause) {
    return new Pace(
        triggerWait,
        Duration.ofSeconds(10),
        pause,
        Duration.ofSeconds(30),
        Duration.ofSeconds(40),
        Duration.ofMillis(100),
        0);
  }

  private List<String> deeds() {
    return loop.session().remarks().stream()
        .filter(remark -> remark.kind() == Remark.Kind.MAINS_SWITCH)
        .map(Remark::text)
        .toList();
  }
}
