package mainsgap.desk.trace;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Labeled;
import javafx.scene.input.KeyCode;
import javafx.scene.input.ScrollEvent;
import javafx.scene.text.Text;
import javafx.stage.Stage;
import mainsgap.desk.DeskToolkit;
import mainsgap.desk.Shots;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;

@ExtendWith(DeskToolkit.class)
class TraceViewTest {
  private final TraceView view;
  private final Stage stage;

  TraceViewTest() {
    view = DeskToolkit.onFx(TraceView::new);
    stage = DeskToolkit.onFx(() -> opened(view, 1280, 600));
  }

  @AfterEach
  void close() {
    DeskToolkit.doOnFx(stage::close);
  }

  @Test
  void theGapAndTheDeclaredTimeAreTold() {
    show(TraceExamples.whole(100_000, 100_000, 2));
    Shots.save(stage.getScene(), "trace-gap");
    assertEquals(Set.of("8.42 ms ± 0.05 ms"), words(".trace-gap-time"));
    assertEquals(Set.of("declared: at most 10 ms"), words(".trace-declared-time"));
    assertEquals(Set.of("V", "ms from loss"), words(".trace-unit"));
    assertTrue(words(".trace-tick").containsAll(List.of("−10", "0", "10", "300")));
    assertEquals(
        Set.of("output", "mains, as fitted", "backup, as fitted"), words(".trace-legend-entry"));
  }

  @Test
  void aGapOutOfSightIsPointedTo() {
    show(TraceExamples.whole(100_000, 100_000, 2));
    DeskToolkit.doOnFx(() -> view.setView(new TimeSpan(0.1, 0.2)));
    Shots.save(stage.getScene(), "trace-gap-out-of-sight");
    assertEquals(Set.of("◀ 8.42 ms ± 0.05 ms"), words(".trace-gap-time"));
    DeskToolkit.doOnFx(() -> view.setView(new TimeSpan(-0.2, -0.1)));
    Shots.save(stage.getScene(), "trace-gap-to-come");
    assertEquals(Set.of("8.42 ms ± 0.05 ms ▶"), words(".trace-gap-time"));
  }

  @Test
  void keysMoveTheView() {
    TraceScene scene = TraceExamples.whole(100_000, 100_000, 2);
    show(scene);
    FxRobot robot = new FxRobot();
    DeskToolkit.doOnFx(view::requestFocus);
    robot.type(KeyCode.END);
    assertEquals(scene.span(), seen());
    Shots.save(stage.getScene(), "trace-all");
    robot.type(KeyCode.HOME);
    assertEquals(scene.focus(), seen());
    robot.type(KeyCode.RIGHT);
    assertTrue(seen().fromSeconds() > scene.focus().fromSeconds());
    assertEquals(scene.focus().lengthSeconds(), seen().lengthSeconds(), 1e-12);
    robot.type(KeyCode.ADD);
    assertTrue(seen().lengthSeconds() < scene.focus().lengthSeconds());
    robot.type(KeyCode.MINUS, 40);
    assertEquals(scene.span(), seen());
    robot.type(KeyCode.ADD, 100);
    assertEquals(8e-5, seen().lengthSeconds(), 1e-9);
  }

  @Test
  void theWheelZoomsAtThePointerAndADoubleClickTurnsBetweenGapAndAll() {
    TraceScene scene = TraceExamples.whole(100_000, 100_000, 2);
    show(scene);
    FxRobot robot = new FxRobot();
    double pointed = DeskToolkit.onFx(() -> view.secondsAt(300));
    DeskToolkit.doOnFx(() -> view.fireEvent(turnOfWheel(300, 120)));
    assertTrue(seen().lengthSeconds() < scene.focus().lengthSeconds());
    assertEquals(pointed, DeskToolkit.onFx(() -> view.secondsAt(300)), 1e-9);
    robot.doubleClickOn(view);
    assertEquals(scene.focus(), seen());
    robot.doubleClickOn(view);
    assertEquals(scene.span(), seen());
  }

  @Test
  void draggingPansWithThePointer() {
    show(TraceExamples.whole(100_000, 100_000, 2));
    FxRobot robot = new FxRobot();
    double before = DeskToolkit.onFx(() -> view.secondsAt(view.getWidth() / 2));
    robot.drag(view).dropBy(100, 0);
    assertEquals(before, DeskToolkit.onFx(() -> view.secondsAt(view.getWidth() / 2 + 100)), 1e-6);
  }

  @Test
  void manyCapturesAreTellable() {
    show(
        TraceScene.of(
            IntStream.rangeClosed(1, 5)
                .mapToObj(
                    i ->
                        TraceExamples.capture(
                            "trial " + i, 100_000, 100_000, 0.13 * i, 0.006 + 0.001 * i, 2))
                .toList()));
    Shots.save(stage.getScene(), "trace-five");
    assertEquals(5, words(".trace-legend-entry").size());
  }

  private static ScrollEvent turnOfWheel(double x, double units) {
    return new ScrollEvent(
        ScrollEvent.SCROLL,
        x,
        200,
        x,
        200,
        false,
        false,
        false,
        false,
        false,
        false,
        0,
        units,
        0,
        units,
        ScrollEvent.HorizontalTextScrollUnits.NONE,
        0,
        ScrollEvent.VerticalTextScrollUnits.NONE,
        0,
        0,
        null);
  }

  private void show(TraceScene scene) {
    DeskToolkit.doOnFx(() -> view.show(scene));
  }

  private TimeSpan seen() {
    return DeskToolkit.onFx(view::getView);
  }

  private Set<String> words(String selector) {
    return DeskToolkit.onFx(
        () ->
            view.lookupAll(selector).stream()
                .map(TraceViewTest::words)
                .collect(Collectors.toSet()));
  }

  private static String words(Node node) {
    return node instanceof Text text ? text.getText() : ((Labeled) node).getText();
  }

  private static Stage opened(TraceView view, double width, double height) {
    javafx.application.Application.setUserAgentStylesheet(
        new atlantafx.base.theme.PrimerLight().getUserAgentStylesheet());
    Stage stage = new Stage();
    Scene scene = new Scene(view, width, height);
    scene
        .getStylesheets()
        .add(
            Objects.requireNonNull(DeskToolkit.class.getResource("/mainsgap/desk/desk.css"))
                .toExternalForm());
    stage.setScene(scene);
    stage.show();
    return stage;
  }
}
