package mainsgap.desk.trace;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import javafx.event.Event;
import javafx.scene.Scene;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.ScrollEvent;
import javafx.scene.input.ZoomEvent;
import javafx.scene.layout.StackPane;
import javafx.stage.Stage;
import mainsgap.desk.DeskToolkit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

@ExtendWith(DeskToolkit.class)
class TraceGesturesTest {
  private static final TimeSpan MIDDLE = new TimeSpan(0.1, 0.3);

  private final TraceView view = DeskToolkit.onFx(TraceView::new);
  private final List<KeyCode> leftToOthers = new ArrayList<>();
  private final Stage stage = DeskToolkit.onFx(this::opened);

  @BeforeEach
  void show() {
    DeskToolkit.doOnFx(
        () -> {
          view.show(TraceExamples.whole(100_000, 100_000, 2));
          view.setView(MIDDLE);
          view.applyCss();
          view.getParent().layout();
        });
  }

  @AfterEach
  void close() {
    DeskToolkit.doOnFx(stage::close);
  }

  @Test
  void arrowsMoveByATenthAndPagesByNineTenths() {
    assertSpan(0.12, 0.32, after(key(KeyCode.RIGHT)));
    assertSpan(0.1, 0.3, after(key(KeyCode.KP_LEFT)));
    assertSpan(0.28, 0.48, after(key(KeyCode.PAGE_DOWN)));
    assertSpan(0.1, 0.3, after(key(KeyCode.PAGE_UP)));
  }

  @Test
  void theViewStopsAtBothEndsOfTheRecord() {
    TimeSpan record = DeskToolkit.onFx(() -> view.scene().span());
    for (int i = 0; i < 20; i++) {
      fire(key(KeyCode.PAGE_DOWN));
    }
    assertEquals(record.toSeconds(), seen().toSeconds(), 1e-12);
    assertEquals(0.2, seen().lengthSeconds(), 1e-9);
    for (int i = 0; i < 20; i++) {
      fire(key(KeyCode.PAGE_UP));
    }
    assertEquals(record.fromSeconds(), seen().fromSeconds(), 1e-12);
    assertEquals(0.2, seen().lengthSeconds(), 1e-9);
  }

  @Test
  void upAndDownZoomAboutTheMiddleAndUndoEachOther() {
    TimeSpan closer = after(key(KeyCode.UP));
    assertSpan(0.12, 0.28, closer);
    assertSpan(0.1, 0.3, after(key(KeyCode.DOWN)));
  }

  @Test
  void theWheelMovesAcrossWithShiftOrWhenTiltedAndZoomsElse() {
    double unit = DeskToolkit.onFx(view::secondsPerUnit);
    assertSpan(0.1 - 40 * unit, 0.3 - 40 * unit, after(wheel(40, 0, false)));
    assertSpan(0.1, 0.3, after(wheel(0, -40, true)));
    assertEquals(0.16, after(wheel(0, 40, false)).lengthSeconds(), 1e-9);
    assertEquals(0.2, after(wheel(0, -40, false)).lengthSeconds(), 1e-9);
  }

  @Test
  void twoFingersZoomWhereTheyAre() {
    double pointed = DeskToolkit.onFx(() -> view.secondsAt(400));
    fire(
        new ZoomEvent(
            ZoomEvent.ZOOM,
            400,
            100,
            400,
            100,
            false,
            false,
            false,
            false,
            true,
            false,
            2,
            2,
            null));
    assertEquals(0.1, seen().lengthSeconds(), 1e-9);
    assertEquals(pointed, DeskToolkit.onFx(() -> view.secondsAt(400)), 1e-9);
  }

  @Test
  void keysThatMeanNothingHereAndThoseWithControlGoToOthers() {
    fire(key(KeyCode.RIGHT));
    fire(key(KeyCode.SPACE));
    fire(new KeyEvent(KeyEvent.KEY_PRESSED, "", "", KeyCode.RIGHT, false, true, false, false));
    assertEquals(List.of(KeyCode.SPACE, KeyCode.RIGHT), leftToOthers);
    assertSpan(0.12, 0.32, seen());
  }

  @Test
  void twoPicturesWhoseViewsAreBoundMoveTogether() {
    TraceView other = DeskToolkit.onFx(TraceView::new);
    DeskToolkit.doOnFx(
        () -> {
          other.show(TraceExamples.whole(100_000, 100_000, 2));
          other.viewProperty().bindBidirectional(view.viewProperty());
        });
    TimeSpan moved = after(key(KeyCode.RIGHT));
    assertEquals(moved, DeskToolkit.onFx(other::getView));
    assertFalse(moved.equals(MIDDLE));
    DeskToolkit.doOnFx(other::showAll);
    assertTrue(seen().lengthSeconds() > 0.9);
  }

  private static KeyEvent key(KeyCode code) {
    return new KeyEvent(KeyEvent.KEY_PRESSED, "", "", code, false, false, false, false);
  }

  private static ScrollEvent wheel(double across, double up, boolean shift) {
    return new ScrollEvent(
        ScrollEvent.SCROLL,
        400,
        100,
        400,
        100,
        shift,
        false,
        false,
        false,
        false,
        false,
        across,
        up,
        across,
        up,
        ScrollEvent.HorizontalTextScrollUnits.NONE,
        0,
        ScrollEvent.VerticalTextScrollUnits.NONE,
        0,
        0,
        null);
  }

  private TimeSpan after(Event event) {
    fire(event);
    return seen();
  }

  private void fire(Event event) {
    DeskToolkit.doOnFx(() -> view.fireEvent(event));
  }

  private TimeSpan seen() {
    return DeskToolkit.onFx(view::getView);
  }

  private static void assertSpan(double from, double to, TimeSpan span) {
    assertEquals(from, span.fromSeconds(), 1e-9);
    assertEquals(to, span.toSeconds(), 1e-9);
  }

  private Stage opened() {
    StackPane root = new StackPane(view);
    root.setOnKeyPressed(event -> leftToOthers.add(event.getCode()));
    Stage made = new Stage();
    made.setScene(new Scene(root, 900, 400));
    made.show();
    return made;
  }
}
