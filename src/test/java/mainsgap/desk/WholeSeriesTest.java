package mainsgap.desk;

import static mainsgap.desk.DeskToolkit.await;
import static mainsgap.desk.DeskToolkit.doOnFx;
import static mainsgap.desk.DeskToolkit.onFx;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import javafx.scene.Node;
import javafx.scene.control.Labeled;
import javafx.scene.control.TableView;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyCode;
import mainsgap.bench.KeptSession;
import mainsgap.bench.SimulationServer;
import mainsgap.bench.TrialReport;
import mainsgap.desk.manners.DeskMemory;
import mainsgap.desk.manners.DeskTools;
import mainsgap.desk.manners.Page;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;

/** Whole days at the bench through the whole window, by keys alone, on the simulated bench. */
@ExtendWith(DeskToolkit.class)
class WholeSeriesTest {
  private static final String PROFILE = "ten-field-preamble";

  private final FxRobot robot = new FxRobot();
  private final Path sessions;
  private final DeskTools tools;
  private final List<Page> pages;
  private final DeskStage stage;
  private DeskWindow window;

  WholeSeriesTest(@TempDir Path folder) throws IOException {
    sessions = Files.createDirectories(folder.resolve("sessions"));
    tools = DeskToolsForTests.asInTheProgram(folder);
    tools.memory().keep(DeskMemory.SESSIONS_FOLDER, sessions.toString());
    pages = onFx(() -> Pages.of(tools, number -> window.open(number)));
    window = onFx(() -> new DeskWindow(tools, pages, 1440, 900));
    stage = DeskStage.of(tools, window);
  }

  @AfterEach
  void close() {
    doOnFx(() -> pages.forEach(Page::closing));
    stage.close();
    tools.background().close();
  }

  @Test
  void fromTheRigToTheExportedFigure() throws IOException {
    readCautions();
    focusByTab("part-switch");
    robot.push(KeyCode.ENTER);
    focusByTab("series-trials");
    robot.push(KeyCode.CONTROL, KeyCode.A);
    robot.write("5");
    robot.push(KeyCode.F6);
    await("the rig is right", () -> text("#rig-headline").startsWith("The rig is right"));
    robot.push(KeyCode.CONTROL, KeyCode.DIGIT2);
    await("ready", () -> text("#sign-words").equals("Ready"));
    robot.push(KeyCode.F5);
    runToTheEnd();
    assertEquals("Series passed", onFx(() -> text("#sign-words")));
    assertEquals("5 of 5 measured", onFx(() -> text("#sign-count")));

    focusByTab("trials-table");
    robot.push(KeyCode.HOME).push(KeyCode.DOWN).push(KeyCode.DELETE);
    await("asked", () -> isFocused("entry-text"));
    robot.write("the plug was loose");
    robot.push(KeyCode.ENTER);
    await("set aside", () -> text("#sign-count").equals("4 of 5 measured"));

    focusByTab("way-open-findings");
    robot.push(KeyCode.SPACE);
    await("findings", () -> stage.scene().lookup("#findings") != null);
    await("five rows", () -> ((TableView<?>) stage.node("#trials")).getItems().size() == 5);
    stage.shot("whole-findings");
    export("transfer.png", () -> {});
    export(
        "transfer.svg",
        () -> {
          focusByTab("export-format");
          robot.push(KeyCode.DOWN);
        });

    KeptSession kept = KeptSession.read(onlySession());
    assertEquals(
        "the plug was loose", kept.trials().get(1).setAsideReason(), "trial 2 of the session");
    assertEquals(5, kept.trials().size());
    assertTrue(kept.trials().stream().skip(2).allMatch(TrialReport::counts));
  }

  @Test
  void instrumentThatIsUnpluggedInTheMiddleIsPluggedInAgainAndTheSessionGoesOn()
      throws IOException {
    SimulationServer server = SimulationServer.start("standby", 7);
    String resource = server.resource(PROFILE);
    openRig(rigFile(resource));
    focusByTab("cautions");
    robot.push(KeyCode.SPACE);
    readCautions();
    robot.push(KeyCode.CONTROL, KeyCode.DIGIT2);
    await("ready", () -> text("#sign-words").equals("Ready"));
    doOnFx(() -> closeOnceATrialIsMeasured(server));
    robot.push(KeyCode.F5);
    runToTheEnd();
    assertEquals("Fault", onFx(() -> text("#sign-words")));
    stage.shot("whole-fault");

    int port = Integer.parseInt(resource.replaceFirst(".*::(\\d+)::SOCKET", "$1"));
    try (SimulationServer again = SimulationServer.start("standby", 7, Map.of(PROFILE, port))) {
      assertEquals(resource, again.resource(PROFILE));
      await("the way on has the focus", () -> isFocused("way-continue-session"));
      await("the choice counts", () -> stage.node("#end").getStyleClass().contains("fresh"));
      robot.push(KeyCode.SPACE);
      runToTheEnd();
    }
    assertEquals("3 of 3 measured", onFx(() -> text("#sign-count")));
    assertEquals(3, KeptSession.read(onlySession()).trials().size());
  }

  @Test
  void emergencyKeyWorksOnEveryPageAndBringsUpWhatToDo() {
    readCautions();
    robot.push(KeyCode.CONTROL, KeyCode.DIGIT2);
    await("ready", () -> text("#sign-words").equals("Ready"));
    robot.push(KeyCode.F5);
    await("the series begins", () -> !stage.node("#stop").isDisabled());
    robot.push(KeyCode.CONTROL, KeyCode.DIGIT1);
    await("the rig", () -> stage.scene().lookup("#trials-page") == null);
    robot.push(KeyCode.SHIFT, KeyCode.F12);
    await("the trials", () -> stage.scene().lookup("#trials-page") != null);
    await("the series ends", () -> stage.node("#stop").isDisabled());
    assertEquals("Stopped", onFx(() -> text("#sign-words")));
    assertTrue(onFx(() -> text("#sign-to-do")).contains("Open the mains switch by hand"));
  }

  private void closeOnceATrialIsMeasured(SimulationServer server) {
    ((Labeled) stage.node("#sign-count"))
        .textProperty()
        .addListener(
            (property, was, is) -> {
              if (is.startsWith("1 of")) {
                server.close();
              }
            });
  }

  private void openRig(Path file) {
    robot.push(KeyCode.CONTROL, KeyCode.O);
    await("the path", () -> isFocused("rig-path"));
    robot.push(KeyCode.CONTROL, KeyCode.A);
    robot.write(file.toString());
    focusByTab("open-rig");
    robot.push(KeyCode.SPACE);
    await("the rig", () -> text("#rig-name").equals("rig.toml"));
  }

  private Path rigFile(String resource) throws IOException {
    return Files.writeString(
        sessions.resolve("rig.toml"),
        """
        [instrument]
        resource = "%s"
        profile = "%s"

        [unit]
        name = "Invented Lumengrove 600"

        [claim]
        printed = "20 ms"
        millis = 20
        kind = "maximum"

        [supply]
        nominal-volts = 230
        frequency-hertz = 50
        settle-seconds = 0

        [series]
        trials = 3

        [channels.output]
        number = 1
        probe-factor = 100
        category = "cat-iii"
        rated-volts = 600

        [channels.mains]
        number = 2
        probe-factor = 100
        category = "cat-iii"
        rated-volts = 600
        """
            .formatted(resource, PROFILE));
  }

  private void readCautions() {
    await("the first caution", () -> isFocused("caution-1"));
    while (onFx(() -> text("#cautions-left")).startsWith("Read each")) {
      robot.push(KeyCode.SPACE);
    }
  }

  private void runToTheEnd() {
    await("the series begins", () -> !stage.node("#stop").isDisabled());
    await("the series ends", () -> stage.node("#stop").isDisabled());
    await("the ways on", () -> stage.node("#end").isVisible());
  }

  private void export(String name, Runnable choice) {
    Path file = sessions.resolve(name);
    robot.push(KeyCode.CONTROL, KeyCode.E);
    await("the export", () -> stage.node("#export").isVisible());
    choice.run();
    focusByTab("export-path");
    robot.push(KeyCode.CONTROL, KeyCode.A);
    robot.write(file.toString());
    robot.push(KeyCode.ENTER);
    await(name, () -> Files.exists(file));
    robot.push(KeyCode.ESCAPE);
  }

  private Path onlySession() throws IOException {
    try (var files = Files.list(sessions)) {
      List<Path> found = files.filter(file -> file.toString().endsWith(".mainsgap")).toList();
      assertEquals(1, found.size(), found.toString());
      return found.get(0);
    }
  }

  /** Presses Tab until the node has the focus, as somebody without a mouse does. */
  private void focusByTab(String id) {
    for (int i = 0; i < 60; i++) {
      if (onFx(() -> isFocused(id))) {
        return;
      }
      robot.push(KeyCode.TAB);
    }
    throw new AssertionError("not reached by Tab: " + id);
  }

  private boolean isFocused(String id) {
    Node owner = stage.scene().getFocusOwner();
    return owner != null && id.equals(owner.getId());
  }

  private String text(String selector) {
    Node node = stage.node(selector);
    return node instanceof TextInputControl input ? input.getText() : ((Labeled) node).getText();
  }
}
