package mainsgap.desk.pictures;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import mainsgap.desk.trace.Ticks;
import org.jspecify.annotations.Nullable;

/**
 * Where all of the strip lies, in units of its node. From top to bottom: rows of words, the marks,
 * the axis, its numbers. What has no time stands left of the zero.
 */
final class StripLayout {
  private static final double LARGEST_RADIUS_EMS = 0.5;
  private static final double SMALLEST_RADIUS_EMS = 0.16;
  private static final double CROWDED_RADIUS_EMS = 0.3;
  private static final double SMALLER = 0.85;
  private static final double WORDS_EMS = 3.0;
  private static final double BEYOND_EMS = 1.4;
  private static final double AXIS_EMS = 1.7;
  private static final double SIDE_EMS = 1.2;
  private static final double TICKS_EMS = 5;
  private static final double NO_TIME_EMS = 6;

  /** Between those without a time and the axis. */
  private static final double GUTTER_END_EMS = 1.2;

  /** From mark to mark in radii. */
  private static final double MARK_WIDTH = 2.2;

  private final StripScene scene;
  private final double em;
  private final double left;
  private final double right;
  private final double top;
  private final double bottom;
  private final double endMillis;
  private final double radius;
  private final List<Placed> placed;

  /**
   * A trial at its place.
   *
   * @param isBeyond whether its time lies to the right of the axis
   */
  record Placed(StripPoint point, double x, double y, boolean isBeyond) {}

  StripLayout(StripScene scene, double width, double height, double em) {
    this.scene = scene;
    this.em = em;
    left = (hasNoTimes() ? NO_TIME_EMS : SIDE_EMS) * em;
    right = Math.max(left + em, width - SIDE_EMS * em);
    endMillis = scene.endMillis();
    top = (WORDS_EMS + (beyond().isEmpty() ? 0 : BEYOND_EMS)) * em;
    bottom = Math.max(top + em, height - AXIS_EMS * em);
    double tried = Math.min(LARGEST_RADIUS_EMS * em, (bottom - top) / 2);
    List<Placed> found = new ArrayList<>();
    while (!placeAll(tried, found) && tried > SMALLEST_RADIUS_EMS * em) {
      tried *= SMALLER;
    }
    radius = tried;
    placed = List.copyOf(found);
  }

  /** Whether marks lie so close that whiskers could not be told from each other. */
  boolean isCrowded() {
    return radius < CROWDED_RADIUS_EMS * em;
  }

  double x(double millis) {
    return left + millis / endMillis * (right - left);
  }

  double left() {
    return left;
  }

  double right() {
    return right;
  }

  double top() {
    return top;
  }

  double bottom() {
    return bottom;
  }

  double middle() {
    return (top + bottom) / 2;
  }

  double radius() {
    return radius;
  }

  List<Placed> placed() {
    return placed;
  }

  Ticks ticks() {
    return Ticks.between(0, endMillis, TICKS_EMS * em * endMillis / (right - left));
  }

  /** The trial under a place, or within a mark's width of it. */
  @Nullable Placed near(double x, double y) {
    double reach = Math.max(1.6 * radius, 0.8 * em);
    return placed.stream()
        .filter(one -> Math.hypot(one.x() - x, one.y() - y) <= reach)
        .min(Comparator.comparingDouble(one -> Math.hypot(one.x() - x, one.y() - y)))
        .orElse(null);
  }

  /** Whether every mark has a place of its own at this radius. */
  private boolean placeAll(double tried, List<Placed> found) {
    found.clear();
    double room = (bottom - top) / 2 - tried;
    Lanes lanes = new Lanes(MARK_WIDTH * tried, room);
    List<StripPoint> withTime =
        scene.points().stream()
            .filter(point -> point.millis() != null)
            .sorted(Comparator.comparingDouble(StripLayout::millis))
            .toList();
    for (StripPoint point : withTime) {
      boolean beyond = millis(point) > endMillis;
      double x = beyond ? right - tried : x(millis(point));
      found.add(new Placed(point, x, middle() + lanes.place(x), beyond));
    }
    return placeWithoutTime(tried, room, found) && !lanes.isFull();
  }

  /** In columns left of the zero; whether they fit there. */
  private boolean placeWithoutTime(double tried, double room, List<Placed> found) {
    List<StripPoint> points =
        scene.points().stream().filter(point -> point.millis() == null).toList();
    double mark = MARK_WIDTH * tried;
    int rows = 1 + 2 * (int) Math.max(0, Math.floor(room / mark));
    int columns = (points.size() + rows - 1) / rows;
    double gutter = left - GUTTER_END_EMS * em;
    double apart = Math.min(mark, (gutter - mark) / Math.max(1, columns - 1));
    double middleX = noTimeMiddle();
    for (int i = 0; i < points.size(); i++) {
      int column = i / rows;
      int inColumn = Math.min(rows, points.size() - column * rows);
      double x = middleX + (column - (columns - 1) / 2.0) * apart;
      double y = middle() + (i % rows - (inColumn - 1) / 2.0) * mark;
      found.add(new Placed(points.get(i), x, y, false));
    }
    return columns * mark <= gutter;
  }

  /** Those that lie to the right of the axis, in words; empty where there are none. */
  String beyondWords() {
    double[] times = beyond().stream().mapToDouble(StripLayout::millis).sorted().toArray();
    if (times.length == 0) {
      return "";
    }
    String least = MillisWords.millis(times[0]);
    return times.length == 1
        ? "no return in " + least + " →"
        : times.length + " without return in " + least + " or more →";
  }

  private List<StripPoint> beyond() {
    return scene.points().stream().filter(point -> millis(point) > endMillis).toList();
  }

  /** Where those without a time stand. */
  double noTimeMiddle() {
    return (left - GUTTER_END_EMS * em) / 2;
  }

  /** Whether there are any without a time. */
  boolean hasNoTimes() {
    return scene.points().stream().anyMatch(point -> point.millis() == null);
  }

  private static double millis(StripPoint point) {
    Double millis = point.millis();
    return millis == null ? Double.NaN : millis;
  }
}
