package mainsgap.desk.trials;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import mainsgap.bench.KeptSession;
import mainsgap.bench.SimulationServer;
import mainsgap.bench.TrialReport;
import mainsgap.desk.DeskToolsForTests;
import mainsgap.desk.pictures.TrialMark;
import mainsgap.session.Addition;
import mainsgap.session.Ending;
import mainsgap.session.LoadFate;
import mainsgap.transfer.outcome.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Series on the simulated bench, all on the calling thread. */
class TrialsModelTest {
  private final SetRig rig;
  private final TrialsModel model;
  private final List<Path> opened = new ArrayList<>();
  private final List<Sign.Kind> signs = new ArrayList<>();

  TrialsModelTest(@TempDir Path folder) {
    rig = new SetRig(folder);
    model =
        new TrialsModel(
            rig, DeskToolsForTests.atOnce(folder), new Doors(opened::add, () -> {}), Runnable::run);
    model.course().signProperty().addListener((property, was, is) -> signs.add(is.kind()));
  }

  @Test
  void wholeSeriesIsToldFromTheCheckToItsLastSeal() {
    model.start();

    assertEquals(
        List.of(
            Sign.Kind.CONNECTING,
            Sign.Kind.CHECKING,
            Sign.Kind.ARMED,
            Sign.Kind.ARMED,
            Sign.Kind.CAUGHT,
            Sign.Kind.READING,
            Sign.Kind.LOGGING,
            Sign.Kind.PASSED,
            Sign.Kind.CLOSE_SWITCH),
        signs.subList(0, 9));
    assertEquals(Sign.Kind.SERIES_PASSED, sign().kind());
    assertEquals(5, model.book().trials().size());
    assertEquals(5, model.book().figuresProperty().get().measured());
    assertEquals(Verdict.PASS, model.book().figuresProperty().get().verdict());
    assertEquals(kept().session().lastSeal(), evidence().lastSeal());
    assertEquals(5, drawn().trial().number());
    assertFalse(model.runningProperty().get());
    assertEquals(
        List.of(WayOn.OPEN_FINDINGS, WayOn.CONTINUE_SESSION, WayOn.START_AGAIN), model.waysOn());
  }

  @Test
  void failedTrialIsSaidAtOnce() {
    rig.declared(1).trials(1);
    model.start();

    assertTrue(signs.contains(Sign.Kind.FAILED), signs.toString());
    assertEquals(TrialMark.FAILED, TrialMark.of(model.book().trials().get(0)));
    assertEquals(Verdict.FAIL, model.book().figuresProperty().get().verdict());
  }

  @Test
  void stoppedSeriesGoesOnWithTheTrialsThatItLacks() {
    when(Sign.Kind.ARMED, 2, model::stop);
    model.start();

    assertEquals(Sign.Kind.STOPPED, sign().kind());
    assertEquals(WayOn.CONTINUE_SESSION, model.waysOn().get(0));
    int before = model.book().trials().size();
    assertTrue(before < 5, "trials before the stop: " + before);
    Path session = evidence().file();

    model.continueSession();

    assertEquals(Sign.Kind.SERIES_PASSED, sign().kind());
    assertEquals(session, evidence().file());
    assertEquals(5, model.book().trials().size());
    assertEquals(5, model.book().figuresProperty().get().measured());
  }

  @Test
  void emergencySaysThatTheHandHasToOpenTheSwitch() {
    when(Sign.Kind.CAUGHT, 1, model::emergencyOff);
    model.start();

    assertTrue(signs.contains(Sign.Kind.OPEN_SWITCH), signs.toString());
    assertFalse(
        signs.subList(signs.indexOf(Sign.Kind.OPEN_SWITCH), signs.size()).contains(Sign.Kind.ARMED),
        "armed after the emergency");
    assertEquals(
        "Emergency: the instrument is disarmed. Open the mains switch by hand; the unit's output"
            + " may still be live.",
        sign().toDo());
  }

  @Test
  void setAsideAfterTheEndNoLongerCountsAndGetsANewSeal() {
    model.start();
    String seal = evidence().lastSeal();

    model.add(new Addition.SetAside(2, "the plug was loose"));

    TrialReport second = model.book().trials().get(1);
    assertEquals("the plug was loose", second.setAsideReason());
    assertEquals(TrialMark.SET_ASIDE, TrialMark.of(second));
    assertEquals(4, model.book().figuresProperty().get().measured());
    assertNotEquals(seal, evidence().lastSeal());
    assertEquals("It is in the session, under a new last seal", note());
  }

  @Test
  void whatIsAddedWhileTheSeriesRunsIsInItsSession() {
    when(
        Sign.Kind.CLOSE_SWITCH,
        2,
        () -> {
          model.add(new Addition.Load(1, LoadFate.RESET));
          model.add(new Addition.Note(2, "the fan came on"));
        });
    model.start();

    List<TrialReport> trials = kept().trials();
    assertEquals(LoadFate.RESET, trials.get(0).load());
    assertEquals(List.of("the fan came on"), trials.get(1).notes());
    assertEquals(trials, model.book().trials());
  }

  @Test
  void whatDoesNotFitIsSaidAndNothingIsLost() {
    model.start();

    model.add(new Addition.SetAside(1, " "));
    assertEquals("Trial 1 is set aside only with a reason", model.complaintProperty().get());
    model.add(new Addition.Note(null, "on the bench of the workshop"));
    assertEquals("", model.complaintProperty().get());
  }

  @Test
  void noteBeforeAnySeriesIsAnsweredWithWhatToDo() {
    model.add(new Addition.Note(null, "early"));
    assertEquals(
        "There is no session that could take it: start a series first",
        model.complaintProperty().get());
  }

  @Test
  void rigThatIsNotReadyStartsNothingAndSaysWhy() {
    rig.notReady("Tick the cautions on the rig page.");
    model.start();

    assertEquals(new Sign(Sign.Kind.NOT_READY, "Tick the cautions on the rig page."), sign());
    assertFalse(model.runningProperty().get());
    rig.notReady("");
    assertEquals(Sign.Kind.READY, sign().kind());
  }

  @Test
  void instrumentThatDoesNotAnswerIsAFaultWithAWayOn() {
    SimulationServer server = SimulationServer.start("standby", 7);
    rig.real(server.resource("ten-field-preamble"), "ten-field-preamble", "").trials(1);
    server.close();
    model.start();

    assertEquals(Sign.Kind.FAULT, sign().kind());
    assertTrue(sign().toDo().contains("127.0.0.1"), sign().toDo());
    assertEquals(List.of(WayOn.START_AGAIN, WayOn.BACK_TO_RIG), model.waysOn());
  }

  @Test
  void instrumentThatGoesAwayIsAFaultWhoseSessionGoesOnOnAnother() {
    SimulationServer server = SimulationServer.start("standby", 7);
    rig.real(server.resource("ten-field-preamble"), "ten-field-preamble", "").trials(3);
    when(Sign.Kind.ARMED, 3, server::close);
    model.start();
    assertEquals(Sign.Kind.FAULT, sign().kind());
    assertEquals(1, model.book().trials().size());
    assertEquals(WayOn.CONTINUE_SESSION, model.waysOn().get(0));
    assertEquals(Ending.FAULTED, kept().session().ending());

    try (SimulationServer again = SimulationServer.start("standby", 7)) {
      rig.real(again.resource("ten-field-preamble"), "ten-field-preamble", "");
      model.continueSession();
    }
    assertEquals(Sign.Kind.SERIES_PASSED, sign().kind(), sign().toDo());
    assertEquals(3, model.book().figuresProperty().get().measured());
  }

  @Test
  void programClosesItsSwitchOnlyOnAWord() {
    try (SimulationServer server = SimulationServer.start("standby", 7)) {
      rig.real(
              server.resource("ten-field-preamble"),
              "ten-field-preamble",
              """
              [mains-switch]
              kind = "scpi-output"
              resource = "%s"
              emergency-stop = "red button on the bench"
              """
                  .formatted(server.mainsSwitches().get("scpi-output")))
          .trials(2);
      when(Sign.Kind.WORD_ASKED, 1, model::letMainsClose);
      model.start();
    }
    assertTrue(signs.contains(Sign.Kind.WORD_ASKED), signs + sign().toDo());
    assertEquals(Sign.Kind.NOT_YET_SHOWN, sign().kind(), sign().toDo());
    assertTrue(model.course().commandedProperty().get());
  }

  @Test
  void sessionThatWasDamagedOnTheDiskIsNoPassedSeries() {
    rig.trials(3);
    when(Sign.Kind.SERIES_PASSED, 1, this::damage);
    model.start();

    assertEquals(Sign.Kind.FAULT, sign().kind(), sign().toDo());
    assertTrue(sign().toDo().startsWith("The session could not be read back"), sign().toDo());
  }

  private void damage() {
    try {
      byte[] bytes = Files.readAllBytes(evidence().file());
      Arrays.fill(bytes, 4096, bytes.length, (byte) 0x5a);
      Files.write(evidence().file(), bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Test
  void sessionIsOpenedInFindings() {
    rig.trials(1);
    model.start();
    model.openInFindings();
    assertEquals(List.of(evidence().file()), opened);
  }

  /** Does {@code deed} when {@code kind} is on the sign for the {@code time}th time. */
  private void when(Sign.Kind kind, int time, Runnable deed) {
    model
        .course()
        .signProperty()
        .addListener(
            (property, was, is) -> {
              if (is.kind() == kind && signs.stream().filter(kind::equals).count() == time) {
                deed.run();
              }
            });
  }

  private Sign sign() {
    return model.course().signProperty().get();
  }

  private String note() {
    return model.course().noteProperty().get();
  }

  private Evidence evidence() {
    return Optional.ofNullable(model.book().evidenceProperty().get()).orElseThrow();
  }

  private DrawnTrial drawn() {
    DrawnTrial drawn = model.book().drawnProperty().get();
    assertNotNull(drawn);
    return drawn;
  }

  private KeptSession kept() {
    return KeptSession.read(evidence().file());
  }
}
