package mainsgap.desk.findings;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Stream;
import javafx.animation.AnimationTimer;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.testfx.api.FxRobot;

/** By keyboard alone, on sessions of the simulated bench. */
@ExtendWith(DeskToolkit.class)
class FindingsPageTest {
  /** Of the processor alone: what others do on the same machine does not count. */
  private static final long MOST_WORK_MILLIS = 700;

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
    typeInto("#session-path", file);
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
    Label words = (Label) stage.getScene().lookup("#figure-words");
    assertTrue(words.isVisible());
    assertTrue(words.getText().contains("press Ctrl O"), words.getText());
    assertTrue(stage.getScene().lookup("#export-open").isDisabled());
  }

  @Test
  void typedPathIsOpenedAndItsFiguresAreChosenByDigits() {
    openByKeyboard(made.usual("Invented Lumengrove 600"));
    awaitFigure("Transfer time of every trial");
    Shots.save(stage.getScene(), "findings-one-session");
    focus("#sessions");
    robot.type(KeyCode.DIGIT2);
    awaitFigure("Ranking");
    robot.type(KeyCode.DIGIT3);
    awaitFigure("Fast against clean");
    robot.type(KeyCode.DIGIT4);
    awaitFigure("Output voltages laid over each other");
    Shots.save(stage.getScene(), "findings-one-session-traces");
    focus("#trials");
    robot.type(KeyCode.SPACE);
    DeskToolkit.await("unticked", () -> model.traces().chosenProperty().get().size() == 2);
    robot.type(KeyCode.ENTER);
    DeskToolkit.await("opened", () -> model.trial().sceneProperty().get() != null);
    Shots.save(stage.getScene(), "findings-trial-opened");
    robot.type(KeyCode.ESCAPE);
    DeskToolkit.await("closed", () -> model.trial().trialProperty().get() == null);
    focus("#sessions");
    robot.type(KeyCode.DELETE);
    DeskToolkit.await("removed", () -> model.shelf().sessions().isEmpty());
    assertEquals(1, model.offers().files().size());
  }

  @Test
  void sessionsAreComparedInEveryFigure() {
    Path first = made.series("standby", "Invented Lumengrove 600", 6, 20.0);
    made.setAside(first, 2, "the load was touched");
    Path second = made.series("line-interactive", "Invented Quietwell 1000", 6, 4.0);
    Path third = made.series("never-returns", "Invented Tallowmere 450", 3, null);
    Path fourth = made.series("double-conversion", "Invented Fennbrook 2000", 3, 0.5);
    DeskToolkit.doOnFx(() -> model.openAll(List.of(first, second, third, fourth)));
    DeskToolkit.await("all read", () -> model.shelf().sessions().size() == 4);
    focus("#sessions");
    for (FigureKind kind : FigureKind.values()) {
      robot.type(KeyCode.getKeyCode(Integer.toString(kind.number())));
      DeskToolkit.await(kind.words(), () -> model.wishesProperty().get().kind() == kind);
      settle();
      Shots.save(stage.getScene(), "findings-many-" + kind.number());
    }
    DeskToolkit.doOnFx(() -> tools.appearance().darkProperty().set(true));
    DeskToolkit.doOnFx(tools.appearance()::wear);
    settle();
    Shots.save(stage.getScene(), "findings-many-dark");
  }

  /** Until the newest figure is drawn. */
  private void settle() {
    DeskToolkit.await("drawn", () -> model.easel().isSettled());
  }

  @Test
  void windowAnswersWhileTwentySessionsAreReadAndDrawn() throws IOException {
    Path one = made.series("standby", "Invented Lumengrove 600", 5, 20.0);
    List<Path> twenty = new ArrayList<>();
    for (int i = 0; i < 20; i++) {
      twenty.add(Files.copy(one, data.resolve("copy-" + i + ".mainsgap")));
    }
    AtomicLong longestMillis = new AtomicLong();
    DeskToolkit.doOnFx(() -> watch(longestMillis));
    DeskToolkit.doOnFx(() -> model.openAll(twenty));
    for (int width = 960; width <= 1440; width += 60) {
      double to = width;
      DeskToolkit.doOnFx(() -> stage.setWidth(to));
    }
    DeskToolkit.await("all read", () -> model.shelf().sessions().size() == 20);
    settle();
    Shots.save(stage.getScene(), "findings-twenty");
    assertTrue(
        longestMillis.get() < MOST_WORK_MILLIS,
        "the window worked for " + longestMillis + " ms between two pictures");
  }

  /** Notes the most work between two pulses of the window. */
  private static void watch(AtomicLong longestMillis) {
    ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    new AnimationTimer() {
      private long lastNanos;

      @Override
      public void handle(long now) {
        long nanos = threads.getCurrentThreadCpuTime();
        if (lastNanos != 0) {
          longestMillis.accumulateAndGet((nanos - lastNanos) / 1_000_000, Math::max);
        }
        lastNanos = nanos;
      }
    }.start();
  }

  @ParameterizedTest
  @CsvSource({"1280, 720, 14, false", "1280, 720, 14, true", "3840, 2160, 28, false"})
  void pageHasItsPlaceOnEveryScreen(int width, int height, int type, boolean dark) {
    Path first = made.usual("Invented Lumengrove 600");
    Path second = made.series("line-interactive", "Invented Quietwell 1000", 3, 4.0);
    DeskToolkit.doOnFx(
        () -> {
          tools.appearance().darkProperty().set(dark);
          tools.appearance().wear();
          tools.appearance().typePointsProperty().set(type);
          stage.getScene().getRoot().setStyle("-fx-font-size: " + type + "px;");
          stage.setWidth(width);
          stage.setHeight(height);
          model.openAll(List.of(first, second));
        });
    DeskToolkit.await("all read", () -> model.shelf().sessions().size() == 2);
    settle();
    Shots.save(stage.getScene(), "findings-" + width + (dark ? "-dark" : ""));
    assertAll(
        Stream.of("#figure-4", "#export-open", "#choose-session", "#trials", "#sessions")
            .map(id -> () -> assertInside(id, width, height)));
  }

  private void assertInside(String id, int width, int height) {
    Bounds place =
        DeskToolkit.onFx(
            () -> {
              Node node = stage.getScene().lookup(id);
              return node.localToScene(node.getBoundsInLocal());
            });
    assertTrue(
        place.getMinX() >= 0 && place.getMaxX() <= width && place.getMaxY() <= height,
        id + " at " + place);
  }

  @Test
  void figureIsWrittenByKeyboardAndAFileInTheWayIsAskedAbout() throws IOException {
    openByKeyboard(made.usual("Invented Lumengrove 600"));
    awaitFigure("Transfer time of every trial");
    robot.press(KeyCode.CONTROL, KeyCode.E).release(KeyCode.E, KeyCode.CONTROL);
    DeskToolkit.await("export", () -> stage.getScene().lookup("#export").isVisible());
    Path file = data.resolve("figure.png");
    typeInto("#export-path", file);
    robot.type(KeyCode.ENTER);
    DeskToolkit.await("written", () -> Files.exists(file));
    settle();
    Shots.save(stage.getScene(), "findings-export-written");
    robot.type(KeyCode.ENTER);
    DeskToolkit.await("asked", () -> file.equals(model.export().inTheWayProperty().get()));
    Shots.save(stage.getScene(), "findings-export-in-the-way");
    Files.writeString(file, "old");
    focus("#export-replace");
    robot.type(KeyCode.SPACE);
    DeskToolkit.await("replaced", () -> file.toFile().length() > 1000);
    robot.type(KeyCode.ESCAPE);
    DeskToolkit.await("closed", () -> !stage.getScene().lookup("#export").isVisible());
  }

  @Test
  void typeIsAsLargeAsAVideoOfThatSizeNeedsIt() {
    DeskToolkit.doOnFx(
        () ->
            sizes()
                .getSelectionModel()
                .select(List.of(PictureSize.values()).indexOf(PictureSize.FOUR_K)));
    assertEquals("3840", text("#export-width"));
    assertEquals("2160", text("#export-height"));
    assertEquals("56", text("#export-type"));
    DeskToolkit.doOnFx(
        () -> ((TextField) stage.getScene().lookup("#export-width")).setText("1280"));
    assertEquals(PictureSize.OWN, sizes().getValue());
    assertEquals("19", text("#export-type"));
  }

  private ComboBox<?> sizes() {
    return (ComboBox<?>) stage.getScene().lookup("#export-size");
  }

  private String text(String id) {
    return DeskToolkit.onFx(() -> ((TextField) stage.getScene().lookup(id)).getText());
  }

  @Test
  void brokenSessionIsSaidAndCanBeLeftOut() throws IOException {
    openByKeyboard(made.usual("Invented Lumengrove 600"));
    Path broken = Files.writeString(data.resolve("broken.mainsgap"), "nothing like a session");
    openByKeyboard(broken);
    DeskToolkit.await("refused", () -> model.shelf().refused().size() == 1);
    awaitFigure("Transfer time of every trial");
    Shots.save(stage.getScene(), "findings-broken-session");
    focus("#leave-out");
    robot.type(KeyCode.SPACE);
    DeskToolkit.await("left out", () -> model.shelf().refused().isEmpty());
    assertEquals(1, model.shelf().sessions().size());
  }

  private void focus(String id) {
    DeskToolkit.doOnFx(() -> stage.getScene().lookup(id).requestFocus());
  }

  private void typeInto(String id, Path words) {
    DeskToolkit.doOnFx(
        () -> {
          TextField field = (TextField) stage.getScene().lookup(id);
          field.setText(words.toString());
          field.requestFocus();
        });
  }
}
