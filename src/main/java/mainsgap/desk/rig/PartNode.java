package mainsgap.desk.rig;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.kordamp.ikonli.javafx.FontIcon;
import org.kordamp.ikonli.material2.Material2AL;
import org.kordamp.ikonli.material2.Material2MZ;

/** One part in the drawing: a picture of it, its state in place, and a place to click. */
final class PartNode extends Button {
  private static final PseudoClass OPEN = PseudoClass.getPseudoClass("open");

  private final Part part;
  private final FontIcon mark = new FontIcon();
  private final VBox words = new VBox();
  private final Label danger = Rows.label("", "rig-danger");
  private final Label live = Rows.label("", "rig-live");

  /** Shows {@code picture} over the words, or beside them where {@code wide}. */
  PartNode(Part part, Node picture, boolean wide) {
    this.part = part;
    setId("part-" + part.id());
    getStyleClass().setAll("rig-part", part.id());
    setMnemonicParsing(false);
    words.getStyleClass().add("rig-part-words");
    Label title = Rows.label(part.title(), "rig-part-title");
    mark.getStyleClass().add("rig-mark");
    HBox head = new HBox(title, mark);
    head.setAlignment(Pos.CENTER_LEFT);
    head.getStyleClass().add("rig-part-head");
    VBox said = new VBox(head, words, danger, live);
    said.getStyleClass().add("rig-part-words");
    Pane graphic = wide ? new HBox(picture, said) : new VBox(picture, said);
    graphic.getStyleClass().add("rig-part-graphic");
    setGraphic(graphic);
    List.of(danger, live).forEach(Rows::showWhileSaid);
  }

  /** The part. */
  Part part() {
    return part;
  }

  /** Whether its settings are open. */
  void showOpen(boolean open) {
    pseudoClassStateChanged(OPEN, open);
  }

  void show(PartState state) {
    words
        .getChildren()
        .setAll(
            state.words().stream()
                .filter(line -> !line.isEmpty())
                .map(line -> Rows.label(line, "rig-part-line"))
                .toList());
    danger.setText(state.danger());
    live.setText(state.live());
    getStyleClass().removeIf(style -> style.startsWith("level-"));
    getStyleClass().add("level-" + state.level().name().toLowerCase(Locale.ROOT));
    mark.setVisible(
        state.level() == PartState.Level.WRONG || state.level() == PartState.Level.RIGHT);
    mark.setManaged(mark.isVisible());
    mark.setIconCode(
        state.level() == PartState.Level.WRONG ? Material2MZ.WARNING : Material2AL.CHECK_CIRCLE);
    setAccessibleText(
        part.title()
            + ": "
            + state.words().stream().filter(w -> !w.isEmpty()).collect(Collectors.joining(", "))
            + (state.danger().isEmpty() ? "" : "; " + state.danger())
            + (state.live().isEmpty() ? "" : "; " + state.live()));
  }

  /** A picture by its outline in the style sheet. */
  static Region outline(String name) {
    Region outline = new Region();
    outline.getStyleClass().addAll("rig-outline", "outline-" + name);
    return outline;
  }
}
