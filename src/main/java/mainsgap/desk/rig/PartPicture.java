package mainsgap.desk.rig;

import javafx.scene.layout.Region;
import javafx.scene.shape.SVGPath;
import javafx.scene.transform.Scale;

/** A part, drawn in a few lines that grow with it. */
final class PartPicture extends Region {
  private static final double DRAWN_SIZE = 48;
  private static final String POLES =
      "M0 16 H10 M14 16 A2 2 0 1 1 10 16 A2 2 0 1 1 14 16 M38 16 A2 2 0 1 1 34 16 A2 2 0 1 1 38 16"
          + " M38 16 H48 M0 36 H10 M14 36 A2 2 0 1 1 10 36 A2 2 0 1 1 14 36 M38 36 A2 2 0 1 1 34 36"
          + " A2 2 0 1 1 38 36 M38 36 H48 ";
  static final String SWITCH_OPEN =
      POLES + "M13 14 L34 4 M13 34 L34 24 M24 9 V12 M24 15 V18 M24 21 V29";
  static final String SWITCH_CLOSED =
      POLES + "M14 16 H34 M14 36 H34 M24 16 V20 M24 23 V29 M24 32 V36";
  static final String WALL =
      "M4 0 H44 Q48 0 48 4 V44 Q48 48 44 48 H4 Q0 48 0 44 V4 Q0 0 4 0 Z M41 24 A17 17 0 1 1 7 24 A17"
          + " 17 0 1 1 41 24 M20 24 A3 3 0 1 1 14 24 A3 3 0 1 1 20 24 M34 24 A3 3 0 1 1 28 24 A3 3 0"
          + " 1 1 34 24";
  static final String UNIT =
      "M4 0 H44 Q48 0 48 4 V44 Q48 48 44 48 H4 Q0 48 0 44 V4 Q0 0 4 0 Z M8 15 Q16 -1 24 15 T40 15 M9"
          + " 28 H36 V33 H39 V37 H36 V42 H9 Z M15 32 V38 M22 32 V38 M29 32 V38";
  static final String LOAD = "M48 24 A24 24 0 1 1 0 24 A24 24 0 1 1 48 24 M7 7 L41 41 M41 7 L7 41";

  private final SVGPath path = new SVGPath();
  private final Scale scale = new Scale();

  PartPicture(String drawn) {
    getStyleClass().add("rig-picture");
    path.getStyleClass().add("rig-picture-line");
    path.setManaged(false);
    path.getTransforms().add(scale);
    getChildren().add(path);
    draw(drawn);
  }

  void draw(String drawn) {
    path.setContent(drawn);
  }

  @Override
  protected void layoutChildren() {
    scale.setX(getWidth() / DRAWN_SIZE);
    scale.setY(getHeight() / DRAWN_SIZE);
  }
}
