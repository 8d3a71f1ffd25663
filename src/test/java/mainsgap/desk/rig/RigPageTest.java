package mainsgap.desk.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.StackPane;
import javafx.stage.Stage;
import mainsgap.desk.DeskToolkit;
import mainsgap.desk.DeskToolsForTests;
import mainsgap.desk.Shots;
import mainsgap.desk.manners.DeskTools;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;

@ExtendWith(DeskToolkit.class)
class RigPageTest {
  private final FxRobot robot = new FxRobot();
  private final DeskTools tools;
  private final RigModel model;
  private final Stage stage;
  private boolean atTrials;

  RigPageTest(@TempDir Path folder) {
    tools = DeskToolsForTests.asInTheProgram(folder);
    model = DeskToolkit.onFx(() -> new RigModel(tools));
    stage = DeskToolkit.onFx(this::opened);
  }

  private Stage opened() {
    tools.appearance().wear();
    RigPage page = new RigPage(tools, model, () -> atTrials = true);
    StackPane root = new StackPane(page.node());
    root.setStyle("-fx-font-size: 14px;");
    Stage made = new Stage();
    made.setScene(new Scene(root, 1280, 676));
    made.show();
    page.shown();
    return made;
  }

  @AfterEach
  void close() {
    DeskToolkit.doOnFx(stage::close);
  }

  @Test
  void aSeriesOnTheSimulatedBenchIsMadeReadyByKeysAlone() {
    Shots.save(stage.getScene(), "rig-cautions");
    for (int i = 0; i < 12; i++) {
      robot.type(KeyCode.SPACE);
    }
    DeskToolkit.await("all cautions read", model.cautions()::areRead);
    robot.type(KeyCode.F6);
    DeskToolkit.await("the check's end", () -> model.checking().endProperty().get() != null);
    Shots.save(stage.getScene(), "rig-check-good");
    assertEquals("The rig is right: a series can begin", headline());
    assertEquals("", RigModelTest.whyNotReady(model));
  }

  private String headline() {
    return DeskToolkit.onFx(() -> ((Label) stage.getScene().lookup("#rig-headline")).getText());
  }
}
