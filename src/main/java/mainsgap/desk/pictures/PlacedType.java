package mainsgap.desk.pictures;

import java.util.ArrayList;
import java.util.List;
import javafx.geometry.VPos;
import javafx.scene.layout.Pane;
import javafx.scene.text.Text;

/** Short type at places of a picture; nodes are used again. For the UI thread. */
final class PlacedType {
  private final Pane pane = new Pane();
  private final List<Text> texts = new ArrayList<>();
  private int used;

  PlacedType() {
    pane.setManaged(false);
    pane.setMouseTransparent(true);
  }

  Pane node() {
    return pane;
  }

  /** Starts another picture. */
  void begin() {
    used = 0;
  }

  /**
   * Places {@code words} and tells how wide they are.
   *
   * @param x of its left edge for {@code share} 0, of its middle for 0.5, of its right edge for 1
   * @param y of its middle
   */
  double place(String words, String styleClass, double x, double y, double share) {
    Text text = next(words, styleClass);
    double width = text.getLayoutBounds().getWidth();
    moveTo(text, x - share * width, y);
    return width;
  }

  /** To the right of something; to its left where that would end after {@code end}, and fits. */
  void placeBeside(
      String words, String styleClass, double left, double right, double y, double end) {
    Text text = next(words, styleClass);
    double width = text.getLayoutBounds().getWidth();
    boolean isRight = right + width <= end || left - width < 0;
    moveTo(text, isRight ? right : left - width, y);
  }

  /** Takes away what was not placed in this picture. */
  void end() {
    for (Text text : texts.subList(used, texts.size())) {
      text.setVisible(false);
    }
  }

  private Text next(String words, String styleClass) {
    if (used == texts.size()) {
      Text made = new Text();
      made.setManaged(false);
      made.setTextOrigin(VPos.TOP);
      texts.add(made);
      pane.getChildren().add(made);
    }
    Text text = texts.get(used);
    used++;
    text.setText(words);
    if (!text.getStyleClass().equals(List.of(styleClass))) {
      text.getStyleClass().setAll(styleClass);
    }
    text.setVisible(true);
    text.applyCss();
    return text;
  }

  private static void moveTo(Text text, double x, double y) {
    text.relocate(Math.rint(x), Math.rint(y - text.getLayoutBounds().getHeight() / 2));
  }
}
