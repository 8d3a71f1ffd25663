package mainsgap.desk.rig;

import java.util.Comparator;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import javafx.geometry.Point2D;
import javafx.geometry.Rectangle2D;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;

/** The arrow keys go from part to part, as they are drawn. */
final class PartSteps {
  /** What lies aside of the way counts so much more than what lies along it. */
  private static final double ASIDE = 2;

  private PartSteps() {}

  /** Lets the arrow keys go between {@code nodes}. */
  static void between(Map<Part, PartNode> nodes) {
    nodes.forEach(
        (part, node) ->
            node.addEventHandler(
                KeyEvent.KEY_PRESSED,
                event ->
                    direction(event.getCode())
                        .flatMap(way -> next(part, way))
                        .map(nodes::get)
                        .ifPresent(
                            goal -> {
                              event.consume();
                              goal.requestFocus();
                            })));
  }

  /** The part that comes next in a direction; empty where none does. */
  static Optional<Part> next(Part from, Point2D way) {
    return Stream.of(Part.values())
        .filter(part -> part != from && along(from, part, way) > 0)
        .min(
            Comparator.comparingDouble(
                part -> along(from, part, way) + ASIDE * aside(from, part, way)));
  }

  private static double along(Part from, Part to, Point2D way) {
    return middle(to).subtract(middle(from)).dotProduct(way);
  }

  private static double aside(Part from, Part to, Point2D way) {
    return Math.abs(middle(to).subtract(middle(from)).crossProduct(way).getZ());
  }

  private static Point2D middle(Part part) {
    Rectangle2D place = RigPlan.place(part);
    return new Point2D(
        place.getMinX() + place.getWidth() / 2, place.getMinY() + place.getHeight() / 2);
  }

  private static Optional<Point2D> direction(KeyCode code) {
    return switch (code) {
      case LEFT -> Optional.of(new Point2D(-1, 0));
      case RIGHT -> Optional.of(new Point2D(1, 0));
      case UP -> Optional.of(new Point2D(0, -1));
      case DOWN -> Optional.of(new Point2D(0, 1));
      default -> Optional.empty();
    };
  }
}
