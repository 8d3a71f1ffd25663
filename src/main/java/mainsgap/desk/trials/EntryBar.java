package mainsgap.desk.trials;

import java.util.function.Consumer;
import javafx.application.Platform;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import org.jspecify.annotations.Nullable;

/** A line in which a reason or a note is written, while the series goes on. */
final class EntryBar {
  private final HBox node = new HBox();
  private final Label asked = new Label();
  private final TextField text = new TextField();
  private Consumer<String> taker = written -> {};
  private @Nullable Node cameFrom;

  EntryBar() {
    node.setId("entry");
    node.getStyleClass().add("entry");
    node.setAlignment(Pos.CENTER_LEFT);
    node.setVisible(false);
    node.managedProperty().bind(node.visibleProperty());
    asked.setMinWidth(Region.USE_PREF_SIZE);
    asked.setLabelFor(text);
    text.setId("entry-text");
    text.setOnAction(event -> take());
    HBox.setHgrow(text, Priority.ALWAYS);
    Button take = new Button("Add (Enter)");
    take.setId("entry-take");
    take.getStyleClass().add("accent");
    take.setOnAction(event -> take());
    Button leave = new Button("Leave it (Esc)");
    leave.setId("entry-leave");
    leave.setOnAction(event -> close());
    for (Button button : new Button[] {take, leave}) {
      button.setMinWidth(Region.USE_PREF_SIZE);
    }
    node.getChildren().addAll(asked, text, take, leave);
    node.addEventHandler(
        KeyEvent.KEY_PRESSED,
        pressed -> {
          if (pressed.getCode() == KeyCode.ESCAPE) {
            pressed.consume();
            close();
          }
        });
  }

  Region node() {
    return node;
  }

  boolean isOpen() {
    return node.isVisible();
  }

  /** Asks; {@code written} takes the words, and nothing is taken where the user leaves it. */
  void ask(String question, String hint, Consumer<String> written) {
    if (!isOpen()) {
      cameFrom = node.getScene() == null ? null : node.getScene().getFocusOwner();
    }
    asked.setText(question);
    text.setAccessibleText(question);
    text.setPromptText(hint);
    text.clear();
    taker = written;
    node.setVisible(true);
    // The letter that asked for it is typed after it was pressed, and is no part of the text.
    Platform.runLater(text::requestFocus);
  }

  private void take() {
    String written = text.getText().strip();
    if (!written.isEmpty()) {
      close();
      taker.accept(written);
    }
  }

  private void close() {
    node.setVisible(false);
    if (cameFrom != null) {
      cameFrom.requestFocus();
    }
  }
}
