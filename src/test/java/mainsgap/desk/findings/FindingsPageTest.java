package mainsgap.desk.findings;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import javafx.scene.Scene;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.StackPane;
import javafx.stage.Stage;
import mainsgap.desk.Desk;
import mainsgap.desk.DeskToolkit;
import mainsgap.desk.DeskToolsForTests;
import mainsgap.desk.Shots;
import mainsgap.desk.manners.DeskTools;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;

/** By keyboard alone, on sessions of the simulated bench. */
@ExtendWith(DeskToolkit.class)
class FindingsPageTest {
  private final Path data;
  private final DeskTools tools;
  private final SimulatedSessions made;
  private final FindingsModel model;
  private final FxRobot robot = new FxRobot();
  private final Stage stage;

  FindingsPageTest(@TempDir Path folder) throws IOException {
    data = Files.createDirectories(folder.resolve("data"));
    tools = DeskToolsForTests.asInTheProgram(folder);
    made = new SimulatedSessions(data);
    model = DeskToolkit.onFx(() -> new FindingsModel(tools, data));
    stage = DeskToolkit.onFx(this::opened);
  }

  private Stage opened() {
    FindingsPage page = new FindingsPage(tools, model);
    StackPane root = new StackPane(page.node());
    root.getStyleClass().add("desk");
    root.setStyle("-fx-font-size: 14px;");
    Scene scene = new Scene(root, 1440, 850);
    scene
        .getStylesheets()
        .add(Objects.requireNonNull(Desk.class.getResource("desk.css")).toExternalForm());
    tools.appearance().wear();
    Stage made = new Stage();
    made.setScene(scene);
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
    tools.background().close();
  }

  private void openByKeyboard(Path file) {
    DeskToolkit.doOnFx(
        () -> {
          TextField typed = (TextField) stage.getScene().lookup("#session-path");
          typed.setText(file.toString());
          typed.requestFocus();
        });
    robot.type(KeyCode.ENTER);
  }

  private void awaitFigure(String words) {
    DeskToolkit.await(
        words,
        () -> {
          Picture picture = model.easel().pictureProperty().get();
          return picture != null && picture.words().equals(words);
        });
  }

  @Test
  void emptyPageSaysWhatToDo() {
    Shots.save(stage.getScene(), "findings-empty");
  }

  @Test
  void typedPathIsOpenedAndItsFiguresAreChosenByDigits() {
    openByKeyboard(made.usual("Invented Lumengrove 600"));
    awaitFigure("Transfer time of every trial");
    Shots.save(stage.getScene(), "findings-one-session");
    DeskToolkit.doOnFx(() -> stage.getScene().lookup("#sessions").requestFocus());
    robot.type(KeyCode.DIGIT2);
    awaitFigure("Fast against clean");
    Shots.save(stage.getScene(), "findings-fast-against-clean");
    robot.type(KeyCode.DELETE);
    DeskToolkit.await("removed", () -> model.shelf().sessions().isEmpty());
    assertEquals(1, model.offers().files().size());
  }
}
