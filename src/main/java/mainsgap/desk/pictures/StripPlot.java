package mainsgap.desk.pictures;

import java.util.ArrayList;
import java.util.List;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.layout.Region;
import javafx.scene.shape.Circle;
import javafx.scene.shape.Line;
import javafx.scene.shape.LineTo;
import javafx.scene.shape.MoveTo;
import javafx.scene.shape.Path;
import javafx.scene.shape.PathElement;
import javafx.scene.shape.Rectangle;
import javafx.scene.text.Text;
import mainsgap.desk.pictures.StripLayout.Placed;
import org.jspecify.annotations.Nullable;

/** Draws the strip. For the UI thread. */
final class StripPlot extends Region {
  private static final double RING = 1.5;
  private static final double WHISKER_END = 0.45;
  private static final double LOWER_ROW_EMS = 0.85;
  private static final double ROW_EMS = 1.4;
  private static final double HALF_LINE_EMS = 0.6;

  private final Text em = new Text("0");
  private final Rectangle guard = new Rectangle();
  private final Line axis = new Line();
  private final Line gutter = new Line();
  private final Path grid = drawn("strip-grid");
  private final Line declared = new Line();
  private final Path bound = drawn("strip-bound");
  private final Path whiskers = drawn("strip-whiskers");
  private final MarkPaths marks = new MarkPaths();
  private final Circle ring = new Circle();
  private final PlacedType type = new PlacedType();

  private StripScene scene = StripScene.EMPTY;
  private @Nullable Integer chosen;
  private StripLayout places = new StripLayout(StripScene.EMPTY, 0, 0, 1);

  StripPlot() {
    getStyleClass().add("strip-plot");
    setFocusTraversable(true);
    setAccessibleRole(AccessibleRole.IMAGE_VIEW);
    styled(guard, "strip-guard");
    styled(axis, "strip-axis");
    styled(gutter, "strip-gutter");
    styled(declared, "strip-declared");
    styled(ring, "mark-ring");
    em.setManaged(false);
    em.setVisible(false);
    em.fontProperty().addListener((property, was, is) -> requestLayout());
    getChildren()
        .addAll(
            guard,
            grid,
            gutter,
            axis,
            declared,
            whiskers,
            bound,
            marks.node(),
            ring,
            type.node(),
            em);
  }

  void show(StripScene shown, @Nullable Integer number) {
    scene = shown;
    chosen = number;
    setAccessibleText(shown.words());
    requestLayout();
  }

  StripLayout places() {
    return places;
  }

  @Override
  protected double computePrefHeight(double width) {
    return 12 * em.getFont().getSize();
  }

  @Override
  protected double computeMinHeight(double width) {
    return 7 * em.getFont().getSize();
  }

  @Override
  protected double computePrefWidth(double height) {
    return 40 * em.getFont().getSize();
  }

  @Override
  protected double computeMinWidth(double height) {
    return 16 * em.getFont().getSize();
  }

  @Override
  protected void layoutChildren() {
    double size = em.getFont().getSize();
    places = new StripLayout(scene, getWidth(), getHeight(), size);
    type.begin();
    placeAxis(size);
    placeLines(size);
    placeMarks();
    type.end();
  }

  private void placeAxis(double size) {
    double bottom = Math.rint(places.bottom()) + 0.5;
    place(axis, places.left(), bottom, places.right(), bottom);
    gutter.setVisible(places.hasNoTimes());
    double between = Math.rint(places.left() - 0.6 * size) + 0.5;
    place(gutter, between, places.top(), between, bottom);
    double row = places.bottom() + 0.95 * size;
    if (places.hasNoTimes()) {
      type.place("no time", "strip-tick", places.noTimeMiddle(), row, 0.5);
    }
    List<PathElement> lines = new ArrayList<>();
    double unitLeft = places.right() - type.place("ms", "strip-unit", places.right(), row, 1);
    var ticks = places.ticks();
    for (double millis : ticks.values()) {
      double x = Math.rint(places.x(millis)) + 0.5;
      lines.add(new MoveTo(x, places.top()));
      lines.add(new LineTo(x, bottom + 0.3 * size));
      if (x + 1.2 * size < unitLeft) {
        type.place(ticks.words(millis), "strip-tick", x, row, 0.5);
      }
    }
    grid.getElements().setAll(lines);
  }

  /** The line to the right has the upper row of words: so neither line runs through the other's. */
  private void placeLines(double size) {
    double lower = places.top() - LOWER_ROW_EMS * size;
    double upper = lower - ROW_EMS * size;
    Double declaredMillis = scene.declaredMillis();
    Double boundMillis = scene.boundMillis();
    boolean boundIsRight =
        boundMillis != null && (declaredMillis == null || boundMillis > declaredMillis);
    declared.setVisible(declaredMillis != null);
    guard.setVisible(declaredMillis != null && scene.guardMillis() > 0);
    bound.getElements().clear();
    if (declaredMillis != null) {
      placeDeclared(declaredMillis, boundIsRight ? lower : upper, size);
    }
    if (boundMillis != null) {
      placeBound(boundMillis, boundIsRight ? upper : lower, size);
    }
  }

  private void placeDeclared(double millis, double row, double size) {
    double x = Math.rint(places.x(millis));
    place(declared, x, row - HALF_LINE_EMS * size, x, places.bottom());
    double from = places.x(Math.max(0, millis - scene.guardMillis()));
    guard.setX(from);
    guard.setY(places.top());
    guard.setWidth(Math.max(0, places.x(millis + scene.guardMillis()) - from));
    guard.setHeight(places.bottom() - places.top());
    beside(scene.declaredWords(), "strip-declared-words", x, row, size);
  }

  /** A bracket that closes to the right. */
  private void placeBound(double millis, double row, double size) {
    double x = Math.rint(places.x(millis));
    double hook = 0.4 * size;
    double top = row - HALF_LINE_EMS * size;
    bound
        .getElements()
        .setAll(
            new MoveTo(x - hook, top),
            new LineTo(x, top),
            new LineTo(x, places.bottom() - 1),
            new LineTo(x - hook, places.bottom() - 1));
    beside(scene.boundWords(), "strip-bound-words", x, row, size);
  }

  /** To the right of the line to the right, where there is room; to the left of the other. */
  private void beside(String words, String styleClass, double x, double row, double size) {
    double away = HALF_LINE_EMS * size;
    boolean isUpper = row < places.top() - (LOWER_ROW_EMS + ROW_EMS / 2) * size;
    double end = isUpper || scene.isLoneLine() ? getWidth() - away : 0;
    type.placeBeside(words, styleClass, x - away, x + away, row, end);
  }

  private void placeMarks() {
    double radius = places.radius();
    List<PathElement> spans = new ArrayList<>();
    ring.setVisible(false);
    for (Placed one : places.placed()) {
      StripPoint point = one.point();
      marks.add(point.mark(), point.shape(), one.x(), one.y(), radius);
      addWhisker(one, radius, spans);
      if (chosen != null && point.number() == chosen) {
        ring.setVisible(true);
        ring.setCenterX(one.x());
        ring.setCenterY(one.y());
        ring.setRadius(RING * radius + 2);
      }
    }
    placeBeyond();
    marks.draw();
    whiskers.getElements().setAll(spans);
  }

  /** The words for those that lie to the right of the axis. */
  private void placeBeyond() {
    String words = places.beyondWords();
    if (!words.isEmpty()) {
      double row = HALF_LINE_EMS * em.getFont().getSize() + 2;
      type.place(words, "strip-beyond", places.right(), row, 1);
    }
  }

  /** Where it reaches out of the mark. */
  private void addWhisker(Placed one, double radius, List<PathElement> spans) {
    Double millis = one.point().millis();
    double half = one.point().uncertaintyMillis();
    if (millis == null
        || one.isBeyond()
        || places.isCrowded()
        || places.x(half) - places.x(0) <= radius) {
      return;
    }
    double end = WHISKER_END * radius;
    double from = places.x(Math.max(0, millis - half));
    double to = Math.min(places.x(millis + half), getWidth());
    for (double x : new double[] {from, to}) {
      spans.add(new MoveTo(x, one.y() - end));
      spans.add(new LineTo(x, one.y() + end));
    }
    spans.add(new MoveTo(from, one.y()));
    spans.add(new LineTo(to, one.y()));
  }

  private static Path drawn(String styleClass) {
    Path path = new Path();
    styled(path, styleClass);
    return path;
  }

  private static void styled(Node node, String styleClass) {
    node.setManaged(false);
    node.getStyleClass().add(styleClass);
  }

  private static void place(Line line, double fromX, double fromY, double toX, double toY) {
    line.setStartX(fromX);
    line.setStartY(fromY);
    line.setEndX(toX);
    line.setEndY(toY);
  }
}
