package mainsgap.report;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.List;

/** The shapes that stand for trials and units, of radius 1 about 0, 0. */
final class Marks {
  private static final Shape CIRCLE = new Ellipse2D.Double(-0.85, -0.85, 1.7, 1.7);
  private static final Shape SQUARE = new Rectangle2D.Double(-0.78, -0.78, 1.56, 1.56);
  private static final Shape TRIANGLE = polygon(0, -1, 0.95, 0.75, -0.95, 0.75);
  private static final Shape TRIANGLE_DOWN = polygon(0, 1, 0.95, -0.75, -0.95, -0.75);
  private static final Shape DIAMOND = polygon(0, -1.1, 1, 0, 0, 1.1, -1, 0);
  private static final Shape CROSS =
      polygon(
          -1, -0.6, -0.6, -1, 0, -0.4, 0.6, -1, 1, -0.6, 0.4, 0, 1, 0.6, 0.6, 1, 0, 0.4, -0.6, 1,
          -1, 0.6, -0.4, 0);
  private static final Shape PLUS =
      polygon(
          -0.3, -1, 0.3, -1, 0.3, -0.3, 1, -0.3, 1, 0.3, 0.3, 0.3, 0.3, 1, -0.3, 1, -0.3, 0.3, -1,
          0.3, -1, -0.3, -0.3, -0.3);
  private static final Shape ARROW =
      polygon(-1, -0.35, 0.1, -0.35, 0.1, -0.9, 1.2, 0, 0.1, 0.9, 0.1, 0.35, -1, 0.35);
  private static final Shape HEXAGON =
      polygon(-0.5, -0.9, 0.5, -0.9, 1, 0, 0.5, 0.9, -0.5, 0.9, -1, 0);

  /** How many shapes there are for units. */
  static final int UNIT_SHAPES = 8;

  private static final List<Shape> OF_UNITS =
      List.of(CIRCLE, SQUARE, TRIANGLE, DIAMOND, CROSS, TRIANGLE_DOWN, PLUS, HEXAGON);

  private Marks() {}

  static Shape of(TrialPoint.Kind kind) {
    return switch (kind) {
      case PASSED, NOT_JUDGED -> CIRCLE;
      case FAILED -> CROSS;
      case INCONCLUSIVE -> TRIANGLE;
      case NO_RETURN -> ARROW;
      case NO_INTERRUPTION -> SQUARE;
      case REFUSED -> DIAMOND;
    };
  }

  /** The shape of the unit at {@code index}. */
  static Shape ofUnit(int index) {
    return OF_UNITS.get(index % OF_UNITS.size());
  }

  /** The same shape, filled, or hollow for what does not count. */
  static void draw(
      Graphics2D g, Shape shape, double x, double y, double radius, Color colour, boolean hollow) {
    AffineTransform place = AffineTransform.getTranslateInstance(x, y);
    place.scale(radius, radius);
    Shape placed = place.createTransformedShape(shape);
    g.setColor(colour);
    if (hollow) {
      Stroke before = g.getStroke();
      g.setStroke(new BasicStroke((float) Math.max(1, radius / 4)));
      g.draw(placed);
      g.setStroke(before);
    } else {
      g.fill(placed);
    }
  }

  private static Shape polygon(double... points) {
    Path2D.Double path = new Path2D.Double();
    path.moveTo(points[0], points[1]);
    for (int i = 2; i < points.length; i += 2) {
      path.lineTo(points[i], points[i + 1]);
    }
    path.closePath();
    return path;
  }
}
