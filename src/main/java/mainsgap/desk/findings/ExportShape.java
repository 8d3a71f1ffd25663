package mainsgap.desk.findings;

import java.util.List;
import java.util.Locale;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import mainsgap.report.FigureFormat;
import mainsgap.report.FigureLook;
import mainsgap.report.FigureSheet;

/** Asks for the form of a picture: its format, size, type and look. */
final class ExportShape {
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
  private final FlowPane node;
  private boolean isTakingSize;

  ExportShape() {
    HBox pixels = new HBox(width, new Label("×"), height, new Label("px"));
    pixels.getStyleClass().add("choice");
    Label typeWords = new Label("Smallest type");
    typeWords.setLabelFor(type);
    HBox letters = new HBox(typeWords, type, new Label("px"));
    letters.getStyleClass().add("choice");
    node = new FlowPane(format.node(), size.node(), pixels, letters, look.node());
    node.getStyleClass().add("figure-bar");
    format.valueProperty().set(FigureFormat.PNG);
    size.valueProperty().addListener((property, was, is) -> take(is));
    width.textProperty().addListener((property, was, is) -> sizeTyped());
    height.textProperty().addListener((property, was, is) -> sizeTyped());
    size.valueProperty().set(PictureSize.FULL_HD);
  }

  Region node() {
    return node;
  }

  /** Runs {@code changed} after every change that a file's name tells. */
  void whenChanged(Runnable changed) {
    format.valueProperty().addListener((property, was, is) -> changed.run());
    width.textProperty().addListener((property, was, is) -> changed.run());
    height.textProperty().addListener((property, was, is) -> changed.run());
  }

  void wear(FigureLook window) {
    look.valueProperty().set(window);
  }

  FigureFormat format() {
    return format.valueProperty().get();
  }

  /** The size as a part of a file's name. */
  String sizeWords() {
    return width.getText().strip() + "x" + height.getText().strip();
  }

  ExportForm form(String path) {
    return new ExportForm(
        format(),
        width.getText(),
        height.getText(),
        type.getText(),
        look.valueProperty().get(),
        path);
  }

  private void take(PictureSize chosen) {
    if (chosen != PictureSize.OWN) {
      isTakingSize = true;
      width.setText(Integer.toString(chosen.widthPixels()));
      height.setText(Integer.toString(chosen.heightPixels()));
      isTakingSize = false;
      takeType();
    }
  }

  private void sizeTyped() {
    if (!isTakingSize) {
      size.valueProperty().set(PictureSize.OWN);
      takeType();
    }
  }

  /** Type is as large as a video needs it, until another size of it is typed. */
  private void takeType() {
    try {
      int across = Integer.parseInt(width.getText().strip());
      int down = Integer.parseInt(height.getText().strip());
      type.setText(Long.toString(Math.round(FigureSheet.videoTextPixels(across, down))));
    } catch (NumberFormatException e) {
      // half a number while it is typed; what stays no number is told when it is written
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
}
