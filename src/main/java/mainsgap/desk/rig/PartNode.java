package mainsgap.desk.rig;

import java.util.Locale;
import java.util.stream.Collectors;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import mainsgap.desk.manners.GrowingIcon;
import org.jspecify.annotations.Nullable;
import org.kordamp.ikonli.javafx.FontIcon;
import org.kordamp.ikonli.material2.Material2AL;
import org.kordamp.ikonli.material2.Material2MZ;

/**
 * One part in the drawing: a picture of it, its state in place, and a place to click or to press
 * Enter on. Words that do not fit are cut, and whole in its settings.
 */
final class PartNode extends StackPane {
  private static final PseudoClass OPEN = PseudoClass.getPseudoClass("open");

  private static final PseudoClass FAILS = PseudoClass.getPseudoClass("fails");

  private final Part part;
  private final FontIcon mark = new FontIcon();
  private final VBox words = new VBox();
  private final Label danger = line("", "rig-danger");
  private final Label live = line("", "rig-live");

  /** Shows {@code picture}, where there is one, over the words, or beside them where wide. */
  PartNode(Part part, @Nullable Node picture, boolean wide, Runnable chosen) {
    this.part = part;
    setId("part-" + part.id());
    getStyleClass().setAll("rig-part", part.id());
    setFocusTraversable(true);
    setAccessibleRole(AccessibleRole.BUTTON);
    words.getStyleClass().add("rig-part-words");
    Label title = line(part.title(), "rig-part-title");
    HBox.setHgrow(title, Priority.ALWAYS);
    title.setMaxWidth(Double.MAX_VALUE);
    mark.getStyleClass().add("rig-mark");
    GrowingIcon.follow(mark, title, 1.2);
    HBox head = new HBox(title, mark);
    head.setAlignment(Pos.TOP_LEFT);
    head.getStyleClass().add("rig-part-head");
    FontIcon unused = GrowingIcon.beside(danger, Material2AL.FLASH_ON);
    VBox said = new VBox(head, words, danger, live);
    said.getStyleClass().add("rig-part-words");
    HBox.setHgrow(said, Priority.ALWAYS);
    Pane content = wide ? new HBox() : new VBox();
    if (picture != null) {
      content.getChildren().add(picture);
    }
    content.getChildren().add(said);
    content.getStyleClass().add("rig-part-content");
    getChildren().add(content);
    Rows.showWhileSaid(danger);
    Rows.showWhileSaid(live);
    choosing(chosen);
  }

  private void choosing(Runnable chosen) {
    setOnMouseClicked(
        event -> {
          requestFocus();
          chosen.run();
        });
    setOnKeyPressed(
        event -> {
          if (event.getCode() == KeyCode.ENTER || event.getCode() == KeyCode.SPACE) {
            event.consume();
            chosen.run();
          }
        });
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
                .filter(said -> !said.isEmpty())
                .map(said -> line(said, "rig-part-line"))
                .toList());
    danger.setText(state.danger().words());
    danger.pseudoClassStateChanged(FAILS, !state.danger().stands());
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
            + (state.danger().words().isEmpty() ? "" : "; " + state.danger().words())
            + (state.live().isEmpty() ? "" : "; " + state.live()));
  }

  private static Label line(String words, String style) {
    Label line = new Label(words);
    line.setWrapText(true);
    line.getStyleClass().add(style);
    return line;
  }
}
