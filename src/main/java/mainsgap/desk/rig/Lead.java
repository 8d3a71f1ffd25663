package mainsgap.desk.rig;

import javafx.geometry.Point2D;
import javafx.scene.Group;
import javafx.scene.control.Label;
import javafx.scene.shape.Circle;
import javafx.scene.shape.Line;
import javafx.scene.shape.LineTo;
import javafx.scene.shape.MoveTo;
import javafx.scene.shape.Path;
import javafx.scene.shape.QuadCurveTo;

/** The lead of a clip: from the wire to the clip's card, and from there to the scope. */
final class Lead extends Group {
  private static final double WIDTH_EM = 0.22;
  private static final double TAP_EM = 0.5;
  private static final double BEND_EM = 0.6;
  private static final double INPUT_EM = 1.7;

  private final Circle tap = new Circle();
  private final Path up = new Path();
  private final Line down = new Line();
  private final Label input = new Label();

  /**
   * Where it goes.
   *
   * @param tap on the wire
   * @param levelY how far down it runs before it turns to the card
   * @param card the middle of the card's upper edge
   * @param cardBottomY the card's lower edge
   * @param scopeY the scope's upper edge
   */
  record Way(Point2D tap, double levelY, Point2D card, double cardBottomY, double scopeY) {}

  Lead(Part part) {
    tap.getStyleClass().addAll("rig-tap", part.id());
    up.getStyleClass().addAll("rig-lead", part.id());
    down.getStyleClass().addAll("rig-lead", part.id());
    input.getStyleClass().addAll("rig-input", part.id());
    setAutoSizeChildren(false);
    getChildren().addAll(up, down, tap, input);
    setMouseTransparent(true);
    setManaged(false);
  }

  /** The scope's channel at its end. */
  void channel(String number) {
    input.setText(number);
    input.setVisible(!number.isEmpty());
  }

  /** Lays it along {@code way}, with {@code unit} pixels for an em. */
  void lay(Way way, double unit) {
    tap.setCenterX(way.tap().getX());
    tap.setCenterY(way.tap().getY());
    tap.setRadius(TAP_EM * unit);
    layUp(way, unit);
    down.setStartX(way.card().getX());
    down.setEndX(way.card().getX());
    down.setStartY(way.cardBottomY());
    down.setEndY(way.scopeY());
    up.setStrokeWidth(WIDTH_EM * unit);
    down.setStrokeWidth(WIDTH_EM * unit);
    input.setStyle("-fx-font-size: " + unit + "px;");
    double size = INPUT_EM * unit;
    input.resizeRelocate(way.card().getX() - size / 2, way.scopeY() - size / 2, size, size);
  }

  private void layUp(Way way, double unit) {
    Point2D from = way.tap();
    Point2D to = way.card();
    double side = Math.signum(to.getX() - from.getX());
    double bend = Math.min(BEND_EM * unit, Math.abs(to.getX() - from.getX()) / 2);
    up.getElements()
        .setAll(
            new MoveTo(from.getX(), from.getY()),
            new LineTo(from.getX(), way.levelY() - bend),
            new QuadCurveTo(from.getX(), way.levelY(), from.getX() + side * bend, way.levelY()),
            new LineTo(to.getX() - side * bend, way.levelY()),
            new QuadCurveTo(to.getX(), way.levelY(), to.getX(), way.levelY() + bend),
            new LineTo(to.getX(), to.getY()));
  }
}
