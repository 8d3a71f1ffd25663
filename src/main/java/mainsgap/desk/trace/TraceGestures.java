package mainsgap.desk.trace;

import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import javafx.scene.input.ZoomEvent;

/** How mouse and keys move the view of a picture. For the UI thread. */
final class TraceGestures {
  private static final double CLOSER = 0.8;
  private static final double STEP_SHARE = 0.1;

  /** A turn of the wheel by one notch is 40 units. */
  private static final double UNITS_A_NOTCH = 40;

  private final TraceView view;
  private TimeSpan atPress;
  private double pressX;

  TraceGestures(TraceView view) {
    this.view = view;
    this.atPress = view.getView();
    view.setOnScroll(this::scroll);
    view.setOnZoom(this::zoom);
    view.setOnMousePressed(this::press);
    view.setOnMouseDragged(this::drag);
    view.setOnMouseClicked(this::click);
    view.setOnKeyPressed(this::key);
  }

  private void scroll(ScrollEvent event) {
    double across = event.isShiftDown() ? event.getDeltaX() + event.getDeltaY() : event.getDeltaX();
    if (across != 0) {
      view.setView(view.getView().later(-across * view.secondsPerUnit()));
    } else if (event.getDeltaY() != 0) {
      double factor = Math.pow(CLOSER, event.getDeltaY() / UNITS_A_NOTCH);
      view.setView(view.getView().scaledAbout(view.secondsAt(event.getX()), factor));
    }
    event.consume();
  }

  private void zoom(ZoomEvent event) {
    double factor = 1 / event.getZoomFactor();
    view.setView(view.getView().scaledAbout(view.secondsAt(event.getX()), factor));
    event.consume();
  }

  private void press(MouseEvent event) {
    view.requestFocus();
    atPress = view.getView();
    pressX = event.getX();
  }

  private void drag(MouseEvent event) {
    if (event.isPrimaryButtonDown()) {
      view.setView(atPress.later((pressX - event.getX()) * view.secondsPerUnit()));
    }
  }

  private void click(MouseEvent event) {
    if (event.getButton() == MouseButton.PRIMARY && event.getClickCount() % 2 == 0) {
      if (view.getView().equals(view.scene().focus())) {
        view.showAll();
      } else {
        view.showFocus();
      }
    }
  }

  private void key(KeyEvent event) {
    if (event.isShortcutDown() || event.isAltDown()) {
      return;
    }
    boolean known = true;
    switch (event.getCode()) {
      case LEFT, KP_LEFT -> step(-STEP_SHARE);
      case RIGHT, KP_RIGHT -> step(STEP_SHARE);
      case PAGE_UP -> step(-1 + STEP_SHARE);
      case PAGE_DOWN -> step(1 - STEP_SHARE);
      case PLUS, EQUALS, ADD, UP, KP_UP -> scale(CLOSER);
      case MINUS, SUBTRACT, DOWN, KP_DOWN -> scale(1 / CLOSER);
      case HOME -> view.showFocus();
      case END -> view.showAll();
      default -> known = false;
    }
    if (known) {
      event.consume();
    }
  }

  private void step(double share) {
    view.setView(view.getView().later(share * view.getView().lengthSeconds()));
  }

  private void scale(double factor) {
    TimeSpan now = view.getView();
    view.setView(now.scaledAbout((now.fromSeconds() + now.toSeconds()) / 2, factor));
  }
}
