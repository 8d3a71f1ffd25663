package mainsgap.desk.rig;

import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import javafx.geometry.Point2D;
import javafx.geometry.Rectangle2D;

/**
 * Where everything in the drawing is, in em: the power along the upper edge, the clips beneath the
 * wire, the scope at the foot.
 */
final class RigPlan {
  static final double WIDTH = 60;
  static final double HEIGHT = 36.3;
  static final double WIRE_Y = 2.8;
  static final double WIRE_FROM_X = 6;
  static final double WIRE_TO_X = 54;

  /** Beside the clips and the scope, under the wall. */
  static final Rectangle2D CAUTIONS = new Rectangle2D(0.5, 14.1, 11, 21.7);

  private static final Map<Part, Rectangle2D> PLACES = new EnumMap<>(Part.class);

  static {
    PLACES.put(Part.WALL, new Rectangle2D(0.5, 0.5, 11, 10.8));
    PLACES.put(Part.SWITCH, new Rectangle2D(13.2, 0.5, 11.6, 10.8));
    PLACES.put(Part.UNIT, new Rectangle2D(28.2, 0.5, 12.6, 10.8));
    PLACES.put(Part.LOAD, new Rectangle2D(48, 0.5, 11.5, 10.8));
    PLACES.put(Part.MAINS_CLIP, new Rectangle2D(13.2, 14.1, 11.2, 11));
    PLACES.put(Part.OUTPUT_CLIP, new Rectangle2D(24.9, 14.1, 11.2, 11));
    PLACES.put(Part.SECOND_LEG_CLIP, new Rectangle2D(36.6, 14.1, 11.2, 11));
    PLACES.put(Part.CURRENT_CLAMP, new Rectangle2D(48.3, 14.1, 11.2, 11));
    PLACES.put(Part.SCOPE, new Rectangle2D(13.2, 27.4, 46.3, 8.4));
  }

  /** Where each clip sits on the wire, and how far down its lead runs before it turns. */
  private static final Map<Part, Point2D> TAPS =
      Map.of(
          Part.MAINS_CLIP, new Point2D(26.5, 12.5),
          Part.OUTPUT_CLIP, new Point2D(42.4, 12.1),
          Part.SECOND_LEG_CLIP, new Point2D(44.4, 12.9),
          Part.CURRENT_CLAMP, new Point2D(46.4, 12.5));

  private RigPlan() {}

  static Rectangle2D place(Part part) {
    return Objects.requireNonNull(PLACES.get(part));
  }

  /** The way of the lead of {@code clip}, with {@code unit} pixels for an em from the corner on. */
  static Lead.Way way(Part clip, double left, double top, double unit) {
    Point2D tap = Objects.requireNonNull(TAPS.get(clip));
    Rectangle2D card = place(clip);
    double middle = left + (card.getMinX() + card.getWidth() / 2) * unit;
    return new Lead.Way(
        new Point2D(left + tap.getX() * unit, top + WIRE_Y * unit),
        top + tap.getY() * unit,
        new Point2D(middle, top + card.getMinY() * unit),
        top + card.getMaxY() * unit,
        top + place(Part.SCOPE).getMinY() * unit);
  }
}
