package mainsgap.desk.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Path;
import java.util.Objects;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.StackPane;
import javafx.stage.Stage;
import mainsgap.bench.RigCheckEnd;
import mainsgap.bench.RigSheet;
import mainsgap.desk.DeskToolkit;
import mainsgap.desk.DeskToolsForTests;
import mainsgap.desk.Shots;
import mainsgap.desk.manners.DeskTools;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;
import org.testfx.util.WaitForAsyncUtils;

/** The page with nothing but a keyboard, on the simulated bench. */
@ExtendWith(DeskToolkit.class)
class RigPageTest {
  private static final int CAUTIONS = 12;

  private final FxRobot robot = new FxRobot();
  private final Path folder;
  private final DeskTools tools;
  private final RigModel model;
  private final StackPane root = new StackPane();
  private final Stage stage;
  private boolean atTrials;

  RigPageTest(@TempDir Path folder) {
    this.folder = folder;
    tools = DeskToolsForTests.asInTheProgram(folder);
    model = DeskToolkit.onFx(() -> new RigModel(tools));
    stage = DeskToolkit.onFx(this::opened);
  }

  private Stage opened() {
    tools.appearance().wear();
    RigPage page = new RigPage(tools, model, () -> atTrials = true);
    root.getChildren().add(page.node());
    root.setStyle("-fx-font-size: 14px;");
    Stage made = new Stage();
    made.setScene(new Scene(root, 1280, 676));
    made.show();
    page.shown();
    return made;
  }

  @AfterEach
  void close() {
    DeskToolkit.doOnFx(
        () -> {
          stage.close();
          tools.appearance().darkProperty().set(false);
          tools.appearance().wear();
        });
  }

  @Test
  void aSeriesOnTheSimulatedBenchIsMadeReadyByKeysAlone() {
    shot("rig-cautions");
    readCautions();
    shot("rig-idle");
    check();
    shot("rig-check-good");
    assertEquals("The rig is right: a series can begin", headline());
    assertEquals("", DeskToolkit.onFx(() -> RigModelTest.whyNotReady(model)));
    robot.type(KeyCode.TAB, KeyCode.TAB, KeyCode.ENTER);
    DeskToolkit.await("the trials", () -> atTrials);
  }

  @Test
  void eachPartOpensItsSettingsByEnterAndIsLeftByEscape() {
    readCautions();
    for (Part part : Part.values()) {
      focus(part);
      robot.type(KeyCode.ENTER);
      DeskToolkit.await("the settings of " + part, () -> title().equals(part.title()));
      shot("rig-settings-" + part.id());
      robot.type(KeyCode.ESCAPE);
      DeskToolkit.await("the focus back on " + part, () -> node("#part-" + part.id()).isFocused());
    }
  }

  @Test
  void theArrowsGoFromPartToPartAsTheyAreDrawn() {
    focus(Part.WALL);
    robot.type(KeyCode.RIGHT);
    assertFocused(Part.SWITCH);
    robot.type(KeyCode.DOWN);
    assertFocused(Part.MAINS_CLIP);
    robot.type(KeyCode.RIGHT);
    assertFocused(Part.OUTPUT_CLIP);
    robot.type(KeyCode.DOWN);
    assertFocused(Part.SCOPE);
  }

  @Test
  void aWrongSettingIsSaidBesideItAndAWrongProbeIsFound() {
    readCautions();
    focus(Part.OUTPUT_CLIP);
    robot.type(KeyCode.ENTER);
    typeInto("#output-probe-factor", "many");
    DeskToolkit.await(
        "the complaint",
        () ->
            words("#output-probe-factor-complaint")
                .equals("The probe factor is 'many', which is no number; allowed: 0.001 to 10000"));
    shot("rig-bad-field");
    typeInto("#output-probe-factor", "200");
    check();
    assertTrue(headline().contains("probe factor"), headline());
    shot("rig-check-failed");
  }

  @Test
  void aScopeThatDoesNotAnswerIsSaidWithAWayOn() {
    focus(Part.SCOPE);
    robot.type(KeyCode.ENTER);
    DeskToolkit.await("the settings", () -> title().equals("Scope"));
    robot.type(KeyCode.RIGHT);
    DeskToolkit.await("an instrument", () -> model.fields().scope.isReal());
    typeInto("#scope-resource", "TCPIP::127.0.0.1::1::SOCKET");
    DeskToolkit.doOnFx(() -> model.fields().unit.name.type("Lumengrove 600 (invented)"));
    DeskToolkit.doOnFx(() -> RigModelTest.readCautions(model));
    check();
    assertTrue(headline().startsWith("The scope could not be reached"), headline());
    shot("rig-check-no-scope");
  }

  @Test
  void aCheckThatWaitsForASilentScopeIsStoppedByKeysAlone() throws IOException {
    try (ServerSocket silent = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      DeskToolkit.doOnFx(
          () -> {
            model.fields().scope.runs.type(ScopeFields.Runs.INSTRUMENT.word());
            model
                .fields()
                .scope
                .resource
                .type("TCPIP::127.0.0.1::" + silent.getLocalPort() + "::SOCKET");
            model.fields().unit.name.type("Lumengrove 600 (invented)");
            RigModelTest.readCautions(model);
          });
      DeskToolkit.doOnFx(() -> node("#check-rig").requestFocus());
      robot.type(KeyCode.ENTER);
      DeskToolkit.await("the check", model.checking()::isRunning);
      robot.type(KeyCode.ENTER);
      DeskToolkit.await("the check's end", () -> !model.checking().isRunning());
      assertEquals("The check was stopped: nothing is known of the rig", headline());
      robot.type(KeyCode.F6);
      DeskToolkit.await("another check", model.checking()::isRunning);
      shot("rig-check-running");
      DeskToolkit.await("its end", () -> !model.checking().isRunning());
    }
  }

  @Test
  void theRigIsLookedAtAgainAndAgainUntilAKeyStopsIt() {
    readCautions();
    robot.type(KeyCode.F7);
    DeskToolkit.await("a first look", () -> model.checking().endProperty().get() != null);
    RigCheckEnd first = DeskToolkit.onFx(() -> model.checking().endProperty().get());
    assertTrue(DeskToolkit.onFx(model.checking()::isRunning));
    shot("rig-keeps-looking");
    DeskToolkit.await(
        "a second look", () -> !Objects.equals(model.checking().endProperty().get(), first));
    DeskToolkit.doOnFx(() -> node("#check-rig").requestFocus());
    robot.type(KeyCode.ENTER);
    DeskToolkit.await("the end", () -> !model.checking().isRunning());
    assertEquals("The rig is right: a series can begin", headline());
    assertEquals("", DeskToolkit.onFx(() -> RigModelTest.whyNotReady(model)));
  }

  @Test
  void aSearchForInstrumentsIsStartedAndStoppedByKeysAlone() {
    DeskToolkit.doOnFx(() -> model.fields().scope.runs.type(ScopeFields.Runs.INSTRUMENT.word()));
    focus(Part.SCOPE);
    robot.type(KeyCode.ENTER);
    DeskToolkit.await("the settings", () -> title().equals("Scope"));
    DeskToolkit.doOnFx(() -> node("#find-instruments").requestFocus());
    robot.type(KeyCode.ENTER);
    DeskToolkit.await("the search", () -> model.search().runningProperty().get());
    shot("rig-search");
    robot.type(KeyCode.ENTER);
    DeskToolkit.await("the search's end", () -> !model.search().runningProperty().get());
    assertEquals("the search was stopped", DeskToolkit.onFx(() -> words("#search-words")));
  }

  @Test
  void nothingCanBeChangedWhileASeriesRuns() {
    focus(Part.WALL);
    robot.type(KeyCode.ENTER);
    DeskToolkit.doOnFx(() -> model.seriesRuns(true));
    DeskToolkit.await("locked", () -> node("#wall-nominal").isDisabled());
    assertTrue(DeskToolkit.onFx(() -> node("#check-rig").isDisabled()));
    shot("rig-series-runs");
    DeskToolkit.doOnFx(() -> model.seriesRuns(false));
    DeskToolkit.await("unlocked", () -> !node("#wall-nominal").isDisabled());
  }

  @Test
  void aRigIsSavedAndOpenedAgainByKeysAlone() {
    Path file = folder.resolve("my-rig.toml");
    focus(Part.WALL);
    robot.type(KeyCode.ENTER);
    typeInto("#wall-nominal", "120");
    DeskToolkit.await("a change", () -> words("#rig-name").endsWith("not saved"));
    robot.press(KeyCode.CONTROL, KeyCode.S).release(KeyCode.S, KeyCode.CONTROL);
    DeskToolkit.await("the files", () -> title().equals("Rig files"));
    typeInto("#rig-path", file.toString());
    robot.type(KeyCode.TAB, KeyCode.TAB, KeyCode.ENTER);
    DeskToolkit.await("the saved rig", () -> words("#rig-name").equals("my-rig.toml"));
    assertEquals(120, RigSheet.read(file).supply().nominalVolts());
    shot("rig-files");
    focus(Part.WALL);
    robot.type(KeyCode.ENTER);
    typeInto("#wall-nominal", "100");
    robot.press(KeyCode.CONTROL, KeyCode.N).release(KeyCode.N, KeyCode.CONTROL);
    DeskToolkit.await("the question", () -> node("#lose-unsaved").isVisible());
    shot("rig-unsaved");
    assertEquals("100", model.fields().wall.nominalVolts.text());
    DeskToolkit.doOnFx(() -> node("#lose-unsaved").requestFocus());
    robot.type(KeyCode.ENTER);
    DeskToolkit.await("a new rig", () -> words("#rig-name").equals("Rig without a file"));
    assertEquals("230", model.fields().wall.nominalVolts.text());
  }

  @Test
  void darkAndLargePagesHold() {
    readCautions();
    check();
    DeskToolkit.doOnFx(
        () -> {
          tools.appearance().darkProperty().set(true);
          tools.appearance().wear();
        });
    shot("rig-dark");
    size(1440, 856, 14);
    shot("rig-dark-1440");
    size(3840, 2116, 26);
    shot("rig-dark-4k");
    DeskToolkit.doOnFx(
        () -> {
          tools.appearance().darkProperty().set(false);
          tools.appearance().wear();
        });
    shot("rig-4k");
    size(1440, 856, 14);
    shot("rig-1440");
  }

  private void size(double width, double height, double type) {
    DeskToolkit.doOnFx(
        () -> {
          root.setStyle("-fx-font-size: " + type + "px;");
          stage.setWidth(width);
          stage.setHeight(height);
        });
  }

  private void readCautions() {
    for (int i = 0; i < CAUTIONS; i++) {
      robot.type(KeyCode.SPACE);
    }
    DeskToolkit.await("all cautions read", model.cautions()::areRead);
  }

  private void check() {
    robot.type(KeyCode.F6);
    DeskToolkit.await(
        "the check's end",
        () ->
            model.checking().endProperty().get() != null
                && !model.checking().isRunning()
                && !model.checking().outdatedProperty().get());
  }

  private void focus(Part part) {
    DeskToolkit.doOnFx(() -> node("#part-" + part.id()).requestFocus());
    assertFocused(part);
  }

  private void assertFocused(Part part) {
    DeskToolkit.await("the focus on " + part, () -> node("#part-" + part.id()).isFocused());
  }

  private void typeInto(String id, String words) {
    DeskToolkit.await("the field " + id, () -> stage.getScene().lookup(id) != null);
    DeskToolkit.doOnFx(
        () -> {
          TextField field = (TextField) node(id);
          field.requestFocus();
          field.selectAll();
        });
    robot.write(words, 0);
    WaitForAsyncUtils.waitForFxEvents();
    assertEquals(words, DeskToolkit.onFx(() -> ((TextField) node(id)).getText()));
  }

  private Node node(String id) {
    return Objects.requireNonNull(stage.getScene().lookup(id), id);
  }

  private String words(String id) {
    return ((Label) node(id)).getText();
  }

  private String title() {
    return words("#rig-side-title");
  }

  private String headline() {
    return DeskToolkit.onFx(() -> words("#rig-headline"));
  }

  /** Once all that is due has been drawn. */
  private void shot(String name) {
    WaitForAsyncUtils.waitForFxEvents();
    DeskToolkit.doOnFx(
        () -> {
          root.applyCss();
          root.layout();
        });
    WaitForAsyncUtils.waitForFxEvents();
    Shots.save(stage.getScene(), name);
  }
}
