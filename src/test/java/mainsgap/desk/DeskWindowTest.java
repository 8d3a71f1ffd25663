package mainsgap.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.stage.Stage;
import mainsgap.desk.manners.DeskMemory;
import mainsgap.desk.manners.DeskTools;
import mainsgap.desk.manners.Page;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.kordamp.ikonli.Ikon;
import org.kordamp.ikonli.material2.Material2AL;
import org.testfx.api.FxRobot;

@ExtendWith(DeskToolkit.class)
class DeskWindowTest {
  private static final List<String> TITLES = List.of("One", "Two", "Three");

  private final Path folder;
  private final DeskTools tools;
  private final Stage stage;

  DeskWindowTest(@TempDir Path folder) {
    this.folder = folder;
    tools = DeskToolsForTests.asInTheProgram(folder);
    stage = DeskToolkit.onFx(() -> opened(tools));
  }

  private static Stage opened(DeskTools tools) {
    List<Page> pages = TITLES.stream().<Page>map(Plain::new).toList();
    Stage made = new Stage();
    made.setScene(new DeskWindow(tools, pages, 1280, 720).scene());
    made.show();
    return made;
  }

  @AfterEach
  void close() {
    DeskToolkit.doOnFx(stage::close);
  }

  @Test
  void everyPageComesToTheFrontByItsKey() {
    FxRobot robot = new FxRobot();
    robot.press(KeyCode.CONTROL, KeyCode.DIGIT3).release(KeyCode.DIGIT3, KeyCode.CONTROL);
    DeskToolkit.await("the third page", () -> isShown("Three"));
    robot.press(KeyCode.CONTROL, KeyCode.DIGIT1).release(KeyCode.DIGIT1, KeyCode.CONTROL);
    DeskToolkit.await("the first page", () -> isShown("One"));
  }

  @Test
  void typeAndLightAreAsTheyWereLeft() {
    FxRobot robot = new FxRobot();
    robot.press(KeyCode.CONTROL, KeyCode.D).release(KeyCode.D, KeyCode.CONTROL);
    robot.press(KeyCode.CONTROL, KeyCode.EQUALS).release(KeyCode.EQUALS, KeyCode.CONTROL);
    DeskToolkit.await("dark", () -> tools.appearance().darkProperty().get());
    Shots.save(stage.getScene(), "window-dark");
    DeskToolkit.doOnFx(() -> tools.appearance().save());
    DeskTools next = DeskToolsForTests.atOnce(folder);
    assertTrue(next.appearance().darkProperty().get());
    assertEquals(15, next.appearance().typePointsProperty().get());
    DeskToolkit.doOnFx(() -> tools.appearance().darkProperty().set(false));
  }

  @Test
  void silenceIsKeptToo() {
    FxRobot robot = new FxRobot();
    assertFalse(tools.sounds().mutedProperty().get());
    robot.press(KeyCode.CONTROL, KeyCode.M).release(KeyCode.M, KeyCode.CONTROL);
    DeskToolkit.await("silence", () -> tools.sounds().mutedProperty().get());
    tools.memory().save();
    assertEquals("true", DeskMemory.in(folder).text("sound.muted").orElse(""));
  }

  private boolean isShown(String title) {
    return Stream.of(stage.getScene().getRoot().lookup("#page-" + title)).anyMatch(n -> n != null);
  }

  /** A page with nothing but its name. */
  private static final class Plain implements Page {
    private final String title;
    private final StackPane node;

    Plain(String title) {
      this.title = title;
      this.node = new StackPane(new Label(title));
      node.setId("page-" + title);
    }

    @Override
    public String title() {
      return title;
    }

    @Override
    public Ikon icon() {
      return Material2AL.BUILD;
    }

    @Override
    public Region node() {
      return node;
    }

    @Override
    public void shown() {
      node.requestFocus();
    }

    @Override
    public void closing() {}
  }
}
