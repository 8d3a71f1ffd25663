package mainsgap.desk.findings;

import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** One session in the list. */
final class SessionCell extends ListCell<OpenedSession> {
  private final Shelf shelf;

  SessionCell(Shelf shelf) {
    this.shelf = shelf;
    getStyleClass().add("session-cell");
    // a cell is as wide as the list, so that words wrap or end in dots
    setPrefWidth(0);
  }

  @Override
  protected void updateItem(OpenedSession session, boolean empty) {
    super.updateItem(session, empty);
    setText(null);
    if (empty || session == null) {
      setGraphic(null);
      setTooltip(null);
      return;
    }
    setGraphic(face(session));
    setTooltip(new Tooltip(session.unit() + "\n" + session.file()));
    setAccessibleText(session.unit() + ", " + session.trials() + ", " + session.words().verdict());
  }

  private HBox face(OpenedSession session) {
    CheckBox shown = new CheckBox();
    shown.setSelected(session.isShown());
    shown.setFocusTraversable(false);
    shown.setTooltip(new Tooltip("In the figures (space)"));
    shown.setOnAction(event -> shelf.show(session.file(), shown.isSelected()));
    Label unit = new Label(session.unit());
    unit.getStyleClass().add("unit");
    Label firmware = new Label(session.firmware());
    Label verdict = VerdictSign.of(session.verdict());
    verdict.setText(verdict.getText() + " · " + session.trials());
    Label file = new Label(session.fileName());
    file.getStyleClass().add("file");
    VBox words = new VBox(unit, verdict, firmware, file);
    words.setMinWidth(0);
    HBox.setHgrow(words, Priority.ALWAYS);
    HBox face = new HBox(shown, words);
    face.getStyleClass().add("session-face");
    return face;
  }
}
