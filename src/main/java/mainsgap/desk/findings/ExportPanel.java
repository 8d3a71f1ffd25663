package mainsgap.desk.findings;

import java.io.File;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.stage.FileChooser;
import mainsgap.desk.manners.GrowingIcon;
import mainsgap.report.FigureFormat;
import mainsgap.report.FigureLook;
import mainsgap.report.FigureSheet;
import org.kordamp.ikonli.Ikon;
import org.kordamp.ikonli.javafx.FontIcon;
import org.kordamp.ikonli.material2.Material2AL;
import org.kordamp.ikonli.material2.Material2MZ;

/** Asks how and where what is on the screen is to be written. */
final class ExportPanel {
  private final FindingsModel model;
  private final Export export;
  private final VBox node = new VBox();
  private final Choice<FigureFormat> format =
      new Choice<>(
          "export-format", "Export as", List.of(FigureFormat.values()), FigureFormat::name);
  private final Choice<PictureSize> size =
      new Choice<>("export-size", "Size", List.of(PictureSize.values()), PictureSize::words);
  private final Choice<FigureLook> look =
      new Choice<>(
          "export-look",
          "Look",
          List.of(FigureLook.values()),
          one -> one.name().toLowerCase(Locale.ROOT));
  private final TextField width = number("export-width", "Width in pixels");
  private final TextField height = number("export-height", "Height in pixels");
  private final TextField type = number("export-type", "Height of the smallest type in pixels");
  private final TextField path = new TextField();
  private boolean isPathTyped;
  private boolean isFollowing;

  ExportPanel(FindingsModel model, Runnable close) {
    this.model = model;
    this.export = model.export();
    node.setId("export");
    node.getStyleClass().add("export");
    node.getChildren().addAll(shape(), place(close), outcome());
    format.valueProperty().set(FigureFormat.PNG);
    size.valueProperty().set(PictureSize.FULL_HD);
    takeSize(PictureSize.FULL_HD);
    follow();
  }

  Region node() {
    return node;
  }

  /** It has come up: suggests what fits what is on the screen now. */
  void shown() {
    export.forget();
    isPathTyped = false;
    look.valueProperty().set(model.easel().look());
    suggest();
    path.requestFocus();
    path.end();
  }

  private Region shape() {
    Label times = new Label("×");
    HBox pixels = new HBox(width, times, height, new Label("px"));
    pixels.getStyleClass().add("choice");
    Label typeWords = new Label("Smallest type");
    typeWords.setLabelFor(type);
    HBox letters = new HBox(typeWords, type, new Label("px"));
    letters.getStyleClass().add("choice");
    FlowPane row = new FlowPane(format.node(), size.node(), pixels, letters, look.node());
    row.getStyleClass().add("figure-bar");
    return row;
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

  private void follow() {
    size.valueProperty().addListener((property, was, is) -> takeSize(is));
    width.textProperty().addListener((property, was, is) -> sizeTyped());
    height.textProperty().addListener((property, was, is) -> sizeTyped());
    format.valueProperty().addListener((property, was, is) -> formatChosen(was, is));
    path.textProperty()
        .addListener(
            (property, was, is) -> {
              if (!isFollowing) {
                isPathTyped = true;
                export.forget();
              }
            });
  }

  private void takeSize(PictureSize chosen) {
    if (chosen == PictureSize.OWN) {
      return;
    }
    isFollowing = true;
    width.setText(Integer.toString(chosen.widthPixels()));
    height.setText(Integer.toString(chosen.heightPixels()));
    isFollowing = false;
    sizeChanged();
  }

  private void sizeTyped() {
    if (!isFollowing) {
      size.valueProperty().set(PictureSize.OWN);
      sizeChanged();
    }
  }

  /** Type stays as large as in a video. */
  private void sizeChanged() {
    try {
      int across = Integer.parseInt(width.getText().strip());
      int down = Integer.parseInt(height.getText().strip());
      type.setText(Long.toString(Math.round(FigureSheet.videoTextPixels(across, down))));
    } catch (NumberFormatException e) {
      // what is being typed is told when it is written
      return;
    }
    suggest();
  }

  private void formatChosen(FigureFormat was, FigureFormat is) {
    String words = path.getText();
    if (words.endsWith(was.suffix())) {
      setPath(words.substring(0, words.length() - was.suffix().length()) + is.suffix());
    }
  }

  private void suggest() {
    if (!isPathTyped) {
      withOrder(
          order ->
              setPath(
                  export.suggestion(
                      order,
                      width.getText() + "x" + height.getText(),
                      format.valueProperty().get().suffix())));
    }
  }

  private void setPath(String words) {
    isFollowing = true;
    path.setText(words);
    isFollowing = false;
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
    return new ExportForm(
        format.valueProperty().get(),
        width.getText(),
        height.getText(),
        type.getText(),
        look.valueProperty().get(),
        path.getText());
  }

  private void choose() {
    FileChooser chooser = new FileChooser();
    chooser.setTitle("Write the figure");
    String ending = format.valueProperty().get().suffix();
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

  private static TextField number(String id, String words) {
    TextField field = new TextField();
    field.setId(id);
    field.setAccessibleText(words);
    field.setTooltip(new Tooltip(words));
    field.getStyleClass().add("number");
    return field;
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
