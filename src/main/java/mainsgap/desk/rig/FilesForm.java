package mainsgap.desk.rig;

import java.io.File;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.function.Consumer;
import javafx.beans.InvalidationListener;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import javafx.stage.FileChooser;
import org.jspecify.annotations.Nullable;

/** Opens and saves rig files, by a path that is typed, by a list, or by the system's own window. */
final class FilesForm {
  private final RigModel model;
  private final RigShelf shelf;
  private final Rows rows;
  private final TextField path = new TextField();
  private final VBox recent = new VBox();

  FilesForm(RigModel model) {
    this.model = model;
    this.shelf = model.shelf();
    rows = new Rows(model.lockedProperty());
    path.setId("rig-path");
    path.setOnAction(event -> typed(shelf::open));
    path.setPromptText("path of a rig file, then Enter");
    path.setAccessibleText("Path of a rig file");
    path.disableProperty().bind(model.lockedProperty());
    recent.getStyleClass().add("rig-rows");
    rows.note("A rig is a file: the same that the command run --rig reads.");
    rows.add(path);
    rows.add(buttons());
    Label words = Rows.label("", "rig-note");
    words.setId("rig-file-words");
    words.textProperty().bind(shelf.wordsProperty());
    Rows.showWhileSaid(words);
    rows.add(words);
    rows.add(question());
    rows.heading("Opened before");
    rows.add(recent);
    InvalidationListener show = change -> showRecent();
    shelf.recent().addListener(show);
    shelf.fileProperty().addListener(change -> showPath());
    showRecent();
    showPath();
  }

  Rows rows() {
    return rows;
  }

  void focus() {
    path.requestFocus();
    path.selectAll();
  }

  private VBox question() {
    Label words = Rows.label("", "rig-complaint");
    words.setId("unsaved-question");
    words.textProperty().bind(shelf.questionProperty());
    HBox answers =
        new HBox(
            button("lose-unsaved", "Go on without them", () -> shelf.answer(true)),
            button("stay-unsaved", "Stay with this rig", () -> shelf.answer(false)));
    answers.getStyleClass().add("rig-choices");
    VBox question = new VBox(words, answers);
    question.getStyleClass().add("rig-rows");
    question.visibleProperty().bind(shelf.questionProperty().isNotEmpty());
    question.managedProperty().bind(question.visibleProperty());
    return question;
  }

  private HBox buttons() {
    HBox buttons =
        new HBox(
            button("open-rig", "Open", () -> typed(shelf::open)),
            button("save-rig-there", "Save there", () -> typed(model::saveAs)),
            button("browse-rigs", "Browse…", this::browse));
    buttons.getStyleClass().add("rig-choices");
    return buttons;
  }

  private Button button(String id, String words, Runnable deed) {
    Button button = new Button(words);
    button.setId(id);
    button.disableProperty().bind(model.lockedProperty());
    button.setOnAction(event -> deed.run());
    return button;
  }

  private void typed(Consumer<Path> deed) {
    String words = path.getText() == null ? "" : path.getText().strip();
    if (words.isEmpty()) {
      shelf.refuse("no path is typed: type one, or browse");
      return;
    }
    try {
      deed.accept(Path.of(words).toAbsolutePath());
    } catch (InvalidPathException e) {
      shelf.refuse("'" + words + "' is no path on this system: type another");
    }
  }

  private void browse() {
    FileChooser chooser = new FileChooser();
    chooser.setTitle("Rig file");
    chooser.getExtensionFilters().add(new FileChooser.ExtensionFilter("Rig files", "*.toml"));
    @Nullable File chosen = chooser.showOpenDialog(path.getScene().getWindow());
    if (chosen != null) {
      path.setText(chosen.getPath());
    }
  }

  private void showPath() {
    Path file = shelf.fileProperty().get();
    path.setText(file == null ? "" : file.toString());
  }

  private void showRecent() {
    recent.getChildren().clear();
    for (Path one : shelf.recent()) {
      Button open = button("", one.getFileName() + "\n" + one.getParent(), () -> shelf.open(one));
      open.setWrapText(true);
      open.getStyleClass().add("rig-found");
      open.setMaxWidth(Double.MAX_VALUE);
      recent.getChildren().add(open);
    }
    if (shelf.recent().isEmpty()) {
      recent.getChildren().add(Rows.label("none yet", "rig-note"));
    }
  }
}
