package mainsgap.desk.trials;

import static mainsgap.desk.DeskToolkit.await;
import static mainsgap.desk.DeskToolkit.doOnFx;
import static mainsgap.desk.DeskToolkit.onFx;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javafx.scene.control.Button;
import javafx.scene.control.Labeled;
import javafx.scene.input.KeyCode;
import mainsgap.bench.KeptSession;
import mainsgap.bench.SimulationServer;
import mainsgap.desk.DeskStage;
import mainsgap.desk.DeskToolkit;
import mainsgap.desk.DeskToolsForTests;
import mainsgap.desk.Shots;
import mainsgap.desk.manners.DeskTools;
import mainsgap.session.Ending;
import mainsgap.session.LoadFate;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;

/** The page as its user has it: by keys alone, on the simulated bench. */
@ExtendWith(DeskToolkit.class)
class TrialsPageTest {
  private final FxRobot robot = new FxRobot();
  private final List<Path> opened = new ArrayList<>();
  private final SetRig rig;
  private final DeskTools tools;
  private final TrialsModel model;
  private final TrialsPage page;
  private final DeskStage stage;

  TrialsPageTest(@TempDir Path folder) {
    rig = new SetRig(folder);
    tools = DeskToolsForTests.asInTheProgram(folder);
    model = onFx(() -> new TrialsModel(rig, tools, new Doors(opened::add, () -> {})));
    page = onFx(() -> new TrialsPage(model));
    stage = DeskStage.of(tools, page, 1440, 900);
  }

  @AfterEach
  void close() {
    doOnFx(page::closing);
    stage.close();
  }

  @Test
  void seriesIsRunAndSealedByKeysAlone() {
    await("ready", () -> words().equals("Ready"));
    stage.shot("trials-idle");
    shotAt(Sign.Kind.ARMED, 4, "trials-armed");
    shotAt(Sign.Kind.CAUGHT, 4, "trials-caught");
    shotAt(Sign.Kind.PASSED, 4, "trials-passed");
    shotAt(Sign.Kind.CLOSE_SWITCH, 4, "trials-close-the-switch");
    robot.push(KeyCode.F5);
    await("complete", this::isOver);

    await("the last trace", () -> model.book().drawnProperty().get() != null);
    stage.shot("trials-complete");
    assertEquals("Series passed", text("#sign-words"));
    assertEquals("5 of 5 measured", text("#sign-count"));
    assertEquals(64, text("#last-seal").replaceAll("\\s", "").length());
    assertTrue(text("#series-verdict").startsWith("PASS"), text("#series-verdict"));

    robot.push(KeyCode.SPACE);
    await("findings", () -> opened.size() == 1);
  }

  @Test
  void failedTrialIsSeenAndSaid() {
    rig.declared(1).trials(3);
    shotAt(Sign.Kind.FAILED, 3, "trials-failed");
    robot.push(KeyCode.F5);
    await("the end", this::isOver);
    stage.shot("trials-failed-complete");
    assertTrue(text("#series-verdict").startsWith("FAIL"), text("#series-verdict"));
  }

  @Test
  void trialIsSetAsideNotedAndItsLoadToldByKeys() {
    rig.trials(3);
    robot.push(KeyCode.F5);
    await("complete", this::isOver);
    await("the last trace", () -> model.book().drawnProperty().get() != null);
    doOnFx(() -> stage.node("#trials-table").requestFocus());
    robot.push(KeyCode.UP).push(KeyCode.R).push(KeyCode.DELETE);
    robot.write("the plug was loose");
    stage.shot("trials-set-aside-asked");
    robot.push(KeyCode.ENTER);
    await("set aside", () -> model.book().trials().get(1).setAsideReason() != null);
    robot.push(KeyCode.N);
    robot.write("ready, not a key");
    robot.push(KeyCode.ENTER);
    await("noted", () -> !model.book().trials().get(1).notes().isEmpty());

    assertEquals("the plug was loose", model.book().trials().get(1).setAsideReason());
    assertEquals(LoadFate.RESET, model.book().trials().get(1).load());
    assertEquals(List.of("ready, not a key"), model.book().trials().get(1).notes());
    assertEquals("2 of 3 measured", text("#sign-count"));
    assertEquals("Not yet shown", text("#sign-words"));
    stage.shot("trials-set-aside");
    stage.dark(true);
    stage.shot("trials-dark");
    stage.size(1280, 720);
    stage.shot("trials-1280x720-dark");
    stage.dark(false);
    stage.shot("trials-1280x720");
    stage.size(3840, 2160);
    doOnFx(() -> tools.appearance().growType(14));
    stage.shot("trials-4k");
  }

  @Test
  void whoLeavesAReasonUnwrittenSetsNothingAside() {
    rig.trials(1);
    robot.push(KeyCode.F5);
    await("complete", this::isOver);
    robot.push(KeyCode.DELETE).push(KeyCode.ENTER);
    assertTrue(onFx(() -> stage.node("#entry").isVisible()), "asked again for a reason");
    robot.push(KeyCode.ESCAPE);
    assertFalse(onFx(() -> stage.node("#entry").isVisible()));
    assertEquals(1, model.book().trials().stream().filter(t -> t.counts()).count());
  }

  @Test
  void settlingIsCutShortByEnter() {
    rig.trials(2).settle(Duration.ofHours(1));
    robot.push(KeyCode.F5);
    await("settling", () -> words().equals("Settling"));
    stage.shot("trials-settling");
    robot.push(KeyCode.ENTER);
    await("complete", this::isOver);
  }

  @Test
  void instrumentThatGoesAwayIsAFaultWithAWayOn() {
    SimulationServer server = SimulationServer.start("standby", 7);
    rig.real(server.resource("ten-field-preamble"), "ten-field-preamble", "").trials(3);
    doOnFx(
        () ->
            model
                .course()
                .signProperty()
                .addListener(
                    (property, was, is) -> {
                      if (is.kind() == Sign.Kind.CLOSE_SWITCH) {
                        server.close();
                      }
                    }));
    robot.push(KeyCode.F5);
    await("the fault", () -> words().equals("Fault"));
    await("the last trace", () -> model.book().drawnProperty().get() != null);
    stage.shot("trials-fault");
    assertEquals("way-continue-session", onFx(() -> stage.scene().getFocusOwner().getId()));
    await("the choice counts", () -> stage.node("#end").getStyleClass().contains("fresh"));

    try (SimulationServer again = SimulationServer.start("standby", 7)) {
      rig.real(again.resource("ten-field-preamble"), "ten-field-preamble", "");
      robot.push(KeyCode.SPACE);
      await("complete", this::isOver);
    }
    assertEquals("3 of 3 measured", text("#sign-count"));
  }

  @Test
  void emergencyKeyStopsTheSeriesAndAsksTheHand() {
    rig.settle(Duration.ofHours(1));
    robot.push(KeyCode.F5);
    await("settling", () -> words().equals("Settling"));
    robot.push(KeyCode.F12);
    await("the end", () -> !model.runningProperty().get());
    assertTrue(text("#sign-to-do").contains("Open the mains switch by hand"), text("#sign-to-do"));
    stage.shot("trials-emergency");
  }

  @Test
  void windowThatClosesInTheMiddleLosesNothing() {
    rig.settle(Duration.ofHours(1));
    robot.push(KeyCode.F5);
    await("settling", () -> words().equals("Settling"));
    doOnFx(page::closing);
    assertEndedInOrder();
  }

  @Test
  void processThatIsEndedInTheMiddleLosesNothing() {
    rig.settle(Duration.ofHours(1));
    robot.push(KeyCode.F5);
    await("settling", () -> words().equals("Settling"));
    page.makeSafe();
    assertEndedInOrder();
  }

  private void assertEndedInOrder() {
    Evidence evidence = Objects.requireNonNull(model.book().evidenceProperty().get());
    KeptSession kept = KeptSession.read(evidence.file());
    assertEquals(Ending.STOPPED, kept.session().ending());
    assertEquals(1, kept.trials().size());
  }

  @Test
  void startingAgainNeedsAKeyThatWasMeantForIt() {
    rig.trials(1);
    robot.push(KeyCode.F5);
    await("the end", this::isOver);
    doOnFx(() -> ((Button) stage.node("#way-start-again")).fire());
    assertFalse(model.runningProperty().get());
    await("the choice counts", () -> stage.node("#end").getStyleClass().contains("fresh"));
    doOnFx(() -> ((Button) stage.node("#way-start-again")).fire());
    await("again", () -> model.runningProperty().get());
  }

  @Test
  void rigThatIsNotReadySaysWhyAndStartsNothing() {
    doOnFx(() -> rig.notReady("Read and tick the cautions on the rig page."));
    stage.shot("trials-not-ready");
    robot.push(KeyCode.F5);
    assertEquals("Not ready", text("#sign-words"));
    assertTrue(onFx(() -> stage.node("#start").isDisabled()));
  }

  /** Takes a picture when {@code kind} is on the sign for the {@code time}th time. */
  private void shotAt(Sign.Kind kind, int time, String name) {
    int[] seen = {0};
    doOnFx(
        () ->
            model
                .course()
                .signProperty()
                .addListener(
                    (property, was, is) -> {
                      if (is.kind() == kind && ++seen[0] == time) {
                        stage.scene().snapshot(null);
                        Shots.save(stage.scene().snapshot(null), name);
                      }
                    }));
  }

  private boolean isOver() {
    return !model.runningProperty().get() && !model.waysOn().isEmpty();
  }

  private String words() {
    return ((Labeled) stage.node("#sign-words")).getText();
  }

  private String text(String selector) {
    return onFx(() -> ((Labeled) stage.node(selector)).getText());
  }
}
