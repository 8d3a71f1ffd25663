package mainsgap.desk.findings;

import java.io.File;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.stage.FileChooser;
import mainsgap.desk.manners.GrowingIcon;
import mainsgap.report.FigureFormat;
import org.kordamp.ikonli.Ikon;
import org.kordamp.ikonli.javafx.FontIcon;
import org.kordamp.ikonli.material2.Material2AL;
import org.kordamp.ikonli.material2.Material2MZ;

/** Asks how and where what is on the screen is to be written. */
final class ExportPanel {
  private final FindingsModel model;
  private final Export export;
  private final VBox node = new VBox();
  private final ExportShape shape = new ExportShape();
  private final TextField path = new TextField();
  private boolean isPathTyped;
  private boolean isSuggesting;

  ExportPanel(FindingsModel model, Runnable close) {
    this.model = model;
    this.export = model.export();
    node.setId("export");
    node.getStyleClass().add("export");
    node.getChildren().addAll(shape.node(), place(close), outcome());
    shape.whenChanged(this::shapeChanged);
    path.textProperty().addListener((property, was, is) -> pathChanged());
  }

  Region node() {
    return node;
  }

  /** It has come up: suggests what fits what is on the screen now. */
  void shown() {
    export.forget();
    isPathTyped = false;
    shape.wear(model.easel().look());
    suggest();
    path.requestFocus();
    path.end();
  }

  private Region place(Runnable close) {
    path.setId("export-path");
    path.setAccessibleText("File to write");
    path.setOnAction(event -> write());
    HBox.setHgrow(path, Priority.ALWAYS);
    Button write = button("export-write", "Write", Material2MZ.SAVE_ALT, this::write);
    write.disableProperty().bind(export.writingProperty());
    HBox row =
        new HBox(
            path,
            button("export-choose", "Choose …", Material2AL.FOLDER_OPEN, this::choose),
            write,
            button("export-close", "Close", Material2AL.CLOSE, close));
    row.getStyleClass().add("file-door");
    return row;
  }

  private Region outcome() {
    Label said = new Label();
    said.setId("export-said");
    said.setWrapText(true);
    said.textProperty().bind(export.saidProperty());
    export
        .failedProperty()
        .addListener(
            (property, was, is) -> {
              said.getStyleClass().removeAll("went-wrong");
              if (is) {
                said.getStyleClass().add("went-wrong");
              }
            });
    Button replace =
        button(
            "export-replace",
            "Replace it",
            Material2MZ.REFRESH,
            () -> {
              // the button goes away, the focus stays here
              path.requestFocus();
              withOrder(order -> export.replace(order, form()));
            });
    Button other =
        button(
            "export-other-name",
            "Another name",
            Material2AL.EDIT,
            () -> {
              export.forget();
              path.requestFocus();
            });
    for (Node way : List.of(replace, other)) {
      way.visibleProperty().bind(export.inTheWayProperty().isNotNull());
      way.managedProperty().bind(way.visibleProperty());
    }
    HBox.setHgrow(said, Priority.ALWAYS);
    HBox row = new HBox(said, replace, other);
    row.getStyleClass().add("file-door");
    row.setMinHeight(Region.USE_PREF_SIZE);
    return row;
  }

  private void pathChanged() {
    if (!isSuggesting) {
      isPathTyped = true;
      export.forget();
    }
  }

  /** A name that was typed stays, but for the ending of another format. */
  private void shapeChanged() {
    String words = path.getText();
    String ending = shape.format().suffix();
    for (FigureFormat other : FigureFormat.values()) {
      if (isPathTyped && other != shape.format() && words.endsWith(other.suffix())) {
        setPath(words.substring(0, words.length() - other.suffix().length()) + ending);
      }
    }
    suggest();
  }

  private void suggest() {
    if (!isPathTyped) {
      withOrder(
          order -> setPath(export.suggestion(order, shape.sizeWords(), shape.format().suffix())));
    }
  }

  private void setPath(String words) {
    isSuggesting = true;
    path.setText(words);
    isSuggesting = false;
  }

  private void write() {
    withOrder(order -> export.write(order, form()));
  }

  private void withOrder(Consumer<FigureOrder> deed) {
    FigureOrder order = model.onScreen();
    if (order != null) {
      deed.accept(order);
    }
  }

  private ExportForm form() {
    return shape.form(path.getText());
  }

  private void choose() {
    if (model.seriesRunsProperty().get()) {
      path.requestFocus();
      return;
    }
    FileChooser chooser = new FileChooser();
    chooser.setTitle("Write the figure");
    String ending = shape.format().suffix();
    chooser
        .getExtensionFilters()
        .add(
            new FileChooser.ExtensionFilter(
                ending.substring(1).toUpperCase(Locale.ROOT), "*" + ending));
    File now = new File(path.getText());
    if (now.getParentFile() != null && now.getParentFile().isDirectory()) {
      chooser.setInitialDirectory(now.getParentFile());
      chooser.setInitialFileName(now.getName());
    }
    File chosen = chooser.showSaveDialog(node.getScene().getWindow());
    if (chosen != null) {
      path.setText(chosen.toString());
      path.requestFocus();
    }
  }

  private static Button button(String id, String words, Ikon icon, Runnable deed) {
    Button button = new Button(words);
    FontIcon unused = GrowingIcon.beside(button, icon);
    button.setId(id);
    button.setMinWidth(Region.USE_PREF_SIZE);
    button.setOnAction(event -> deed.run());
    return button;
  }
}
