package mainsgap.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import mainsgap.arming.LoopState;
import mainsgap.bench.SeriesEnd.Kind;
import mainsgap.session.Ending;
import mainsgap.session.Remark;
import mainsgap.session.Session;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Verdict;
import mainsgap.waiting.StopRequest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The whole way of a series, over TCP, on the simulated bench. */
class SeriesOnTheSimulatedBenchTest {
  private final Requests requests;
  private final Heard heard = new Heard();
  private final StopRequest stop = new StopRequest();

  SeriesOnTheSimulatedBenchTest(@TempDir Path folder) {
    requests = new Requests(folder);
  }

  @ParameterizedTest
  @EnumSource(mode = EnumSource.Mode.EXCLUDE, names = "INTERVAL_TRIGGER") // it comes too late there
  void seriesIsMeasuredJudgedAndLogged(CatchWish catching) {
    SeriesEnd end = Series.of(requests.simulated("standby", 3, catching)).run(heard, stop);

    assertEquals(Kind.COMPLETE, end.kind(), end.sentence());
    assertEquals(3, end.trials().size());
    for (TrialReport trial : end.trials()) {
      assertEquals(Outcome.Kind.MEASURED, trial.outcome().kind());
      assertNotNull(trial.judgement());
    }
    assertEquals(3, end.figures().measured());
    assertEquals(LoopState.COMPLETE, heard.lastState());
    Session session = requests.session();
    assertEquals(Ending.COMPLETE, session.ending());
    assertEquals(end.lastSeal(), session.lastSeal());
    assertEquals(
        List.of(Remark.Kind.SERIES_STARTED, Remark.Kind.COMPLETE),
        session.remarks().stream().map(Remark::kind).toList());
  }

  @ParameterizedTest
  @EnumSource(
      names = {"AUTOMATIC", "EDGE_TRIGGER", "EXTERNAL_TRIGGER", "FORCED_RECORD", "WINDOW_TRIGGER"})
  void restorationIsCaught(CatchWish catching) {
    SeriesEnd end =
        Series.of(requests.back(requests.simulated("standby", 2, catching))).run(heard, stop);

    assertEquals(Kind.COMPLETE, end.kind(), end.sentence());
    assertEquals(Outcome.Kind.MEASURED, end.trials().get(0).outcome().kind());
    assertEquals(Outcome.Kind.MEASURED, end.trials().get(1).outcome().kind());
  }

  /** Going back takes the simulated unit far less than the 21 ms that a dropout waits. */
  @Test
  void restorationInTheBlindZoneIsMissed() {
    SeriesEnd end =
        Series.of(
                requests.impatient(
                    requests.back(requests.simulated("standby", 1, CatchWish.DROPOUT_TRIGGER))))
            .run(heard, stop);

    assertEquals(Kind.NOTHING_MEASURED, end.kind(), end.sentence());
    assertTrue(
        String.join(" ", heard.plan).contains("Blind zone: a gap of 21 ms or more always trips it"),
        String.join(" ", heard.plan));
  }

  @Test
  void sameSeedGivesTheSameTimes(@TempDir Path other) {
    SeriesEnd first =
        Series.of(requests.simulated("standby", 2, CatchWish.AUTOMATIC)).run(heard, stop);
    SeriesEnd second =
        Series.of(new Requests(other).simulated("standby", 2, CatchWish.AUTOMATIC))
            .run(heard, stop);

    assertEquals(
        first.trials().stream().map(TrialReport::outcome).toList(),
        second.trials().stream().map(TrialReport::outcome).toList());
  }

  @Test
  void unitThatNeverReturnsFailsAndIsNotRepeated() {
    SeriesEnd end =
        Series.of(requests.simulated("never-returns", 2, CatchWish.AUTOMATIC)).run(heard, stop);

    assertEquals(Kind.COMPLETE, end.kind(), end.sentence());
    assertEquals(2, end.trials().size());
    assertEquals(Outcome.Kind.NO_RETURN, end.trials().get(0).outcome().kind());
    assertEquals(Verdict.FAIL, end.figures().verdict());
  }

  @Test
  void unitWithoutAGapShowsNoInterruption() {
    SeriesEnd end =
        Series.of(requests.simulated("double-conversion", 2, CatchWish.AUTOMATIC)).run(heard, stop);

    assertEquals(Kind.COMPLETE, end.kind(), end.sentence());
    assertEquals(Outcome.Kind.NO_INTERRUPTION, end.trials().get(0).outcome().kind());
  }

  @Test
  void existingSessionIsGoneOnWithOnlyWhenAsked() {
    SeriesRequest request = requests.simulated("standby", 1, CatchWish.AUTOMATIC);
    SeriesEnd first = Series.of(request).run(heard, stop);
    SeriesEnd refused = Series.of(request).run(heard, stop);
    SeriesEnd second = Series.of(requests.goingOn(request)).run(heard, stop);

    assertEquals(Kind.COMPLETE, first.kind(), first.sentence());
    assertEquals(Kind.SESSION_FAILED, refused.kind(), refused.sentence());
    assertEquals(Kind.COMPLETE, second.kind(), second.sentence());
    assertEquals(2, second.trials().get(0).number());
    assertEquals(2, second.figures().measured());
    assertEquals(2, requests.session().trials().size());
  }

  @Test
  void sessionAboutAnotherUnitIsNotGoneOnWith() {
    SeriesEnd first =
        Series.of(requests.simulated("standby", 1, CatchWish.AUTOMATIC)).run(heard, stop);
    SeriesEnd second =
        Series.of(requests.goingOn(requests.simulated("line-interactive", 1, CatchWish.AUTOMATIC)))
            .run(heard, stop);

    assertEquals(Kind.COMPLETE, first.kind());
    assertEquals(Kind.WRONG_USE, second.kind());
    assertTrue(second.sentence().contains("is about 'simulated standby'"), second.sentence());
  }

  @Test
  void stopAfterTheFirstTrialKeepsIt() {
    SeriesListener stopping =
        new SeriesListener() {
          @Override
          public void trialFinished(TrialReport trial, RunningFigures figures) {
            stop.request();
          }
        };

    SeriesEnd end =
        Series.of(requests.simulated("standby", 3, CatchWish.AUTOMATIC)).run(stopping, stop);

    assertEquals(Kind.STOPPED, end.kind());
    assertEquals(1, end.trials().size());
    assertEquals(Ending.STOPPED, requests.session().ending());
  }

  @Test
  void planIsExplainedAndTheHandPrompted() {
    SeriesEnd end =
        Series.of(requests.simulated("standby", 1, CatchWish.FORCED_RECORD)).run(heard, stop);

    assertEquals(Kind.COMPLETE, end.kind());
    assertFalse(heard.plan.isEmpty());
    assertEquals(List.of("open the mains switch now"), heard.prompts);
  }
}
