package mainsgap.desk.findings;

import java.io.File;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.Tooltip;
import javafx.scene.input.DragEvent;
import javafx.scene.input.TransferMode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.stage.FileChooser;
import mainsgap.desk.manners.GrowingIcon;
import org.kordamp.ikonli.javafx.FontIcon;
import org.kordamp.ikonli.material2.Material2AL;

/** Opens session files that are typed, chosen, or dropped on the page. */
final class FileDoor {
  private final FindingsModel model;
  private final VBox node = new VBox();
  private final TextField typed = new TextField();
  private final Label complaint = new Label();

  FileDoor(FindingsModel model) {
    this.model = model;
    typed.setId("session-path");
    typed.setPromptText("path, then Enter");
    typed.setAccessibleText("Path of a session");
    typed.setOnAction(event -> openTyped());
    HBox.setHgrow(typed, Priority.ALWAYS);
    Button choose = new Button("Open …");
    FontIcon unused = GrowingIcon.beside(choose, Material2AL.FOLDER_OPEN);
    choose.setId("choose-session");
    choose.setTooltip(new Tooltip("Choose session files (Ctrl O)"));
    choose.setMinWidth(Region.USE_PREF_SIZE);
    choose.setOnAction(event -> choose());
    choose.disableProperty().bind(model.seriesRunsProperty());
    complaint.setId("path-complaint");
    complaint.setWrapText(true);
    complaint.visibleProperty().bind(complaint.textProperty().isNotEmpty());
    complaint.managedProperty().bind(complaint.visibleProperty());
    HBox row = new HBox(typed, choose);
    row.getStyleClass().add("file-door");
    node.getChildren().addAll(row, complaint);
  }

  Region node() {
    return node;
  }

  void focus() {
    typed.requestFocus();
  }

  /** Takes files that are dropped on {@code place}. */
  void takeDropped(Region place) {
    place.setOnDragOver(
        event -> {
          if (event.getDragboard().hasFiles()) {
            event.acceptTransferModes(TransferMode.COPY);
          }
          event.consume();
        });
    place.setOnDragDropped(this::dropped);
  }

  void choose() {
    if (model.seriesRunsProperty().get()) {
      focus();
      return;
    }
    FileChooser chooser = new FileChooser();
    chooser.setTitle("Open sessions");
    chooser
        .getExtensionFilters()
        .addAll(
            new FileChooser.ExtensionFilter("Sessions", "*.mainsgap"),
            new FileChooser.ExtensionFilter("All files", "*.*"));
    File folder = model.offers().folder().toFile();
    if (folder.isDirectory()) {
      chooser.setInitialDirectory(folder);
    }
    List<File> chosen = chooser.showOpenMultipleDialog(node.getScene().getWindow());
    if (chosen != null) {
      model.openAll(chosen.stream().map(File::toPath).toList());
    }
  }

  private void openTyped() {
    String words = typed.getText().strip();
    complaint.setText("");
    if (words.isEmpty()) {
      return;
    }
    try {
      model.openAll(List.of(Path.of(words)));
      typed.clear();
    } catch (InvalidPathException e) {
      complaint.setText("'" + words + "' is no path (" + e.getReason() + "); type another one");
    }
  }

  private void dropped(DragEvent event) {
    boolean hasFiles = event.getDragboard().hasFiles();
    if (hasFiles) {
      model.openAll(event.getDragboard().getFiles().stream().map(File::toPath).toList());
    }
    event.setDropCompleted(hasFiles);
    event.consume();
  }
}
