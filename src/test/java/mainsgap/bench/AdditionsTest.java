package mainsgap.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import mainsgap.session.Addition;
import mainsgap.session.Ending;
import mainsgap.session.LoadFate;
import mainsgap.session.Recheck;
import mainsgap.session.SessionReader;
import mainsgap.signal.Capture;
import mainsgap.transfer.TransferMeasurement;
import mainsgap.transfer.claim.TrialVerdict;
import mainsgap.transfer.outcome.Verdict;
import mainsgap.waiting.StopRequest;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a person adds to a series on the simulated bench, while it runs and after it. */
class AdditionsTest {
  private static final Instant LATER = Instant.parse("2027-01-01T00:00:00Z");
  private final Requests requests;

  AdditionsTest(@TempDir Path folder) {
    requests = new Requests(folder);
  }

  /** Runs a series and sets its first trial aside as soon as it is there. */
  private SeriesEnd settingTheFirstAside(String unit, int trials, List<RunningFigures> heard) {
    Series series = Series.of(requests.simulated(unit, trials, CatchWish.AUTOMATIC));
    return series.run(
        new SeriesListener() {
          @Override
          public void trialFinished(TrialReport trial, RunningFigures figures) {
            if (trial.number() == 1) {
              assertTrue(series.add(new Addition.SetAside(1, "the clip had slipped")));
              assertTrue(series.add(new Addition.Load(1, LoadFate.RESET)));
            }
          }

          @Override
          public void added(
              Addition addition, @Nullable TrialReport trial, RunningFigures figures) {
            heard.add(figures);
          }
        },
        new StopRequest());
  }

  @Test
  void figuresLeaveOutATrialSetAsideAndSayIt() {
    List<RunningFigures> heard = new ArrayList<>();

    SeriesEnd end = settingTheFirstAside("standby", 4, heard);

    assertEquals(SeriesEnd.Kind.COMPLETE, end.kind(), end.sentence());
    assertEquals(2, heard.size());
    assertEquals(4, end.trials().size(), "the trial stays");
    assertEquals("the clip had slipped", end.trials().get(0).setAsideReason());
    assertEquals(LoadFate.RESET, end.trials().get(0).load());
    assertEquals(3, end.figures().measured());
    assertEquals(
        List.of(new SetAsideTrial(1, Verdict.PASS, "the clip had slipped")),
        end.figures().setAside());
    String reason = end.figures().reason();
    assertNotNull(reason);
    assertTrue(
        reason.endsWith("; 1 set aside: trial 1 (PASS), the clip had slipped"), () -> reason);
  }

  @Test
  void aFailedTrialSetAsideIsNamedWithItsVerdict() {
    SeriesEnd end = settingTheFirstAside("never-returns", 2, new ArrayList<>());

    String reason = end.figures().reason();
    assertNotNull(reason);
    assertTrue(reason.contains("1 set aside: trial 1 (FAIL), the clip had slipped"), () -> reason);
  }

  @Test
  void theGuardedLimitIsTheDeclaredTimeLessTheLargestU() {
    SeriesEnd end =
        Series.of(requests.simulated("standby", 3, CatchWish.AUTOMATIC))
            .run(new SeriesListener() {}, new StopRequest());

    double largest =
        end.trials().stream()
            .mapToDouble(
                trial -> ((mainsgap.transfer.outcome.Measured) trial.outcome()).uncertaintyMillis())
            .max()
            .orElseThrow();
    Double limit = end.figures().guardedLimitMillis();
    assertNotNull(limit);
    assertEquals(20 - largest, limit, 1e-12);
  }

  @Test
  void afterTheSeriesTheSessionTakesMoreAndAllChecksStillPass() {
    Series series = Series.of(requests.simulated("standby", 3, CatchWish.AUTOMATIC));
    SeriesEnd end = series.run(new SeriesListener() {}, new StopRequest());
    Addition aside = new Addition.SetAside(2, "wrong load");
    assertFalse(series.add(aside));

    KeptSession kept = KeptSession.add(requests.file(), aside, LATER);
    KeptSession noted =
        KeptSession.add(requests.file(), new Addition.Note(2, "it was the old one"), LATER);

    assertEquals(2, kept.figures().measured());
    assertEquals("wrong load", kept.trials().get(1).setAsideReason());
    assertEquals(List.of("it was the old one"), noted.trials().get(1).notes());
    assertEquals(end.trials().get(1).judgement(), noted.trials().get(1).judgement());
    assertEquals(Ending.COMPLETE, noted.session().ending());
    assertNotEquals(end.lastSeal(), noted.session().lastSeal());
    try (SessionReader reader = SessionReader.open(requests.file())) {
      assertEquals(
          List.of(),
          Recheck.of(reader, TransferMeasurement::measure, TrialVerdict::judge).differences());
    }
    assertEquals(
        "trial 2 is set aside already",
        assertThrows(BenchException.class, () -> KeptSession.add(requests.file(), aside, LATER))
            .getMessage());
  }

  @Test
  void aSeriesThatGoesOnLeavesOutWhatWasSetAsideBefore() {
    SeriesRequest request = requests.simulated("standby", 2, CatchWish.AUTOMATIC);
    SeriesEnd unused = Series.of(request).run(new SeriesListener() {}, new StopRequest());
    KeptSession kept =
        KeptSession.add(requests.file(), new Addition.SetAside(1, "wrong load"), LATER);
    List<TrialReport> earlier = new ArrayList<>();

    SeriesEnd end =
        Series.of(requests.goingOn(request))
            .run(
                new SeriesListener() {
                  @Override
                  public void earlierTrials(List<TrialReport> trials, RunningFigures figures) {
                    earlier.addAll(trials);
                    assertEquals(1, figures.measured());
                  }
                },
                new StopRequest());

    assertEquals(kept.trials(), earlier);
    assertEquals(3, end.figures().measured());
    assertEquals(List.of(3, 4), end.trials().stream().map(TrialReport::number).toList());
    assertEquals(1, end.figures().setAside().size());
  }

  @Test
  void theListenerGetsEachRawCaptureRightAfterItsTrial() {
    List<String> order = new ArrayList<>();
    SeriesEnd unused =
        Series.of(requests.simulated("standby", 2, CatchWish.AUTOMATIC))
            .run(
                new SeriesListener() {
                  @Override
                  public void trialFinished(TrialReport trial, RunningFigures figures) {
                    order.add("trial " + trial.number());
                  }

                  @Override
                  public void trialCaptured(TrialReport trial, Capture capture) {
                    order.add("capture " + trial.number());
                    try (SessionReader reader = SessionReader.open(requests.file())) {
                      assertEquals(reader.capture(trial.number()).time(), capture.time());
                    }
                  }
                },
                new StopRequest());

    assertEquals(List.of("trial 1", "capture 1", "trial 2", "capture 2"), order);
  }
}
