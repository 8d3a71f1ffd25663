package mainsgap.desk.trace;

import java.util.HashMap;
import java.util.Map;
import javafx.geometry.Bounds;
import javafx.geometry.VPos;
import javafx.scene.layout.Pane;
import javafx.scene.shape.Rectangle;
import javafx.scene.text.Text;

/**
 * Short type at places that move: what stays from picture to picture is only moved, since setting
 * type anew takes longer. For the UI thread.
 */
final class TypeLayer {
  private final Pane pane;
  private final String styleClass;
  private final Map<String, Text> shown = new HashMap<>();
  private final Rectangle plate = new Rectangle();
  private Map<String, Text> before = new HashMap<>();

  TypeLayer(Pane pane, String styleClass) {
    this.pane = pane;
    this.styleClass = styleClass;
    plate.setManaged(false);
    plate.setVisible(false);
    plate.getStyleClass().add("trace-plate");
    pane.getChildren().add(plate);
  }

  /** Starts another picture. */
  void begin() {
    plate.setVisible(false);
    before = new HashMap<>(shown);
    shown.clear();
  }

  /**
   * Places {@code words} and tells how wide they are.
   *
   * @param x of its left edge for {@code share} 0, of its middle for 0.5, of its right edge for 1
   * @param y of its middle
   */
  double place(String words, double x, double y, double share) {
    Text text = textOf(words);
    double width = text.getLayoutBounds().getWidth();
    text.relocate(
        Math.rint(x - share * width), Math.rint(y - text.getLayoutBounds().getHeight() / 2));
    return width;
  }

  /**
   * Places {@code words} beside {@code right}, or to the left of {@code left} where no room is;
   * where there is none either, between both. A plate beneath covers what runs through them.
   */
  void placeBeside(String words, double left, double right, double y, double leftEnd, double end) {
    double width = textOf(words).getLayoutBounds().getWidth();
    if (right + width <= end) {
      place(words, right, y, 0);
    } else if (left - width >= leftEnd) {
      place(words, left, y, 1);
    } else {
      double middle = (Math.max(left, leftEnd) + Math.min(right, end)) / 2;
      double x = Math.max(leftEnd, Math.min(end - width, middle - width / 2));
      place(words, x, y, 0);
    }
    layPlate(textOf(words));
  }

  private void layPlate(Text text) {
    Bounds words = text.getLayoutBounds();
    double margin = Math.rint(words.getHeight() / 4);
    plate.setX(text.getLayoutX() + words.getMinX() - margin);
    plate.setY(text.getLayoutY() + words.getMinY());
    plate.setWidth(words.getWidth() + 2 * margin);
    plate.setHeight(words.getHeight());
    plate.setVisible(true);
  }

  private Text textOf(String words) {
    Text text = shown.get(words);
    if (text == null) {
      text = before.remove(words);
    }
    if (text == null) {
      text = made(words);
    }
    shown.put(words, text);
    return text;
  }

  /** With its style at once, so that its size can be asked. */
  private Text made(String words) {
    Text text = new Text(words);
    text.setManaged(false);
    text.setMouseTransparent(true);
    text.setTextOrigin(VPos.TOP);
    text.getStyleClass().add(styleClass);
    pane.getChildren().add(text);
    text.applyCss();
    return text;
  }

  /** Takes away what was not placed in this picture. */
  void end() {
    pane.getChildren().removeAll(before.values());
    before.clear();
  }
}
