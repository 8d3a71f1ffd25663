package mainsgap.desk.findings;

import javafx.scene.AccessibleRole;
import javafx.scene.image.ImageView;
import javafx.scene.layout.Region;
import javafx.stage.Window;

/** The place of the figure, which is drawn anew for every size. */
final class FigureView extends Region {
  private final Easel easel;
  private final ImageView image = new ImageView();

  FigureView(Easel easel) {
    this.easel = easel;
    setId("figure");
    setAccessibleRole(AccessibleRole.IMAGE_VIEW);
    setMinSize(0, 0);
    image.setManaged(false);
    getChildren().add(image);
    easel.pictureProperty().addListener((property, was, is) -> show(is));
  }

  private void show(Picture picture) {
    image.setImage(picture == null ? null : picture.image());
    setAccessibleText(picture == null ? "no figure" : picture.words());
    requestLayout();
  }

  /** An older picture is stretched until the new one is drawn. */
  @Override
  protected void layoutChildren() {
    double scale = pixelsOfUsual();
    int width = (int) Math.floor(getWidth() * scale);
    int height = (int) Math.floor(getHeight() * scale);
    image.setFitWidth(width / scale);
    image.setFitHeight(height / scale);
    easel.resize(width, height, scale);
  }

  private double pixelsOfUsual() {
    Window window = getScene() == null ? null : getScene().getWindow();
    return window == null ? 1 : window.getRenderScaleX();
  }
}
