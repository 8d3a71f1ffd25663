package mainsgap.desk.pictures;

import java.util.ArrayList;
import java.util.List;
import javafx.scene.AccessibleRole;
import javafx.scene.layout.Region;
import javafx.scene.shape.Circle;
import javafx.scene.shape.Line;
import javafx.scene.shape.LineTo;
import javafx.scene.shape.MoveTo;
import javafx.scene.shape.Path;
import javafx.scene.shape.PathElement;
import javafx.scene.text.Text;

/** Draws one cycle of mains with the places at which it was lost. For the UI thread. */
final class WavePlot extends Region {
  private static final int TICK_DEGREES = 90;
  private static final double SIDE_EMS = 1.6;
  private static final double TOP_EMS = 1.9;
  private static final double BOTTOM_EMS = 2.1;
  private static final double RADIUS_EMS = 0.38;
  private static final double CROWDED_RADIUS_EMS = 0.2;

  /** From so many on, marks are drawn smaller. */
  private static final int CROWD = 60;

  private static final double LATEST_RADIUS_EMS = 0.6;
  private static final double UNITS_A_PIECE = 3;

  private final Text em = new Text("0");
  private final Path grid = new Path();
  private final Path wave = new Path();
  private final Line drop = new Line();
  private final MarkPaths marks = new MarkPaths();
  private final MarkPaths latest = new MarkPaths();
  private final Circle ring = new Circle();
  private final PlacedType type = new PlacedType();
  private List<WavePoint> points = List.of();

  WavePlot() {
    setId("wave-plot");
    getStyleClass().add("wave-plot");
    setAccessibleRole(AccessibleRole.IMAGE_VIEW);
    grid.getStyleClass().add("wave-grid");
    wave.getStyleClass().add("wave-line");
    drop.getStyleClass().add("wave-drop");
    ring.getStyleClass().add("mark-ring");
    em.setVisible(false);
    em.fontProperty().addListener((property, was, is) -> requestLayout());
    getChildren().addAll(grid, drop, wave, marks.node(), latest.node(), ring, type.node(), em);
    getChildren().forEach(child -> child.setManaged(false));
  }

  void show(List<WavePoint> shown, String words) {
    points = List.copyOf(shown);
    setAccessibleText("One cycle of the supply: " + words);
    requestLayout();
  }

  @Override
  protected double computePrefHeight(double width) {
    return 11 * em.getFont().getSize();
  }

  @Override
  protected double computeMinHeight(double width) {
    return 9 * em.getFont().getSize();
  }

  @Override
  protected double computePrefWidth(double height) {
    return 24 * em.getFont().getSize();
  }

  @Override
  protected double computeMinWidth(double height) {
    return 14 * em.getFont().getSize();
  }

  @Override
  protected void layoutChildren() {
    double size = em.getFont().getSize();
    Frame frame =
        new Frame(
            SIDE_EMS * size,
            Math.max(SIDE_EMS * size + 1, getWidth() - SIDE_EMS * size),
            TOP_EMS * size,
            Math.max(TOP_EMS * size + 2, getHeight() - BOTTOM_EMS * size));
    type.begin();
    placeGrid(frame, size);
    placeWave(frame);
    placeMarks(frame, size);
    type.end();
  }

  private void placeGrid(Frame frame, double size) {
    List<PathElement> lines = new ArrayList<>();
    double zero = Math.rint(frame.y(0)) + 0.5;
    lines.add(new MoveTo(frame.left(), zero));
    lines.add(new LineTo(frame.right(), zero));
    for (int degrees = 0; degrees <= 360; degrees += TICK_DEGREES) {
      double x = Math.rint(frame.x(degrees)) + 0.5;
      lines.add(new MoveTo(x, frame.top()));
      lines.add(new LineTo(x, frame.bottom()));
      type.place(degrees + "°", "wave-tick", x, getHeight() - 0.9 * size, 0.5);
    }
    grid.getElements().setAll(lines);
  }

  private void placeWave(Frame frame) {
    int pieces = (int) Math.max(24, (frame.right() - frame.left()) / UNITS_A_PIECE);
    List<PathElement> line = new ArrayList<>();
    for (int i = 0; i <= pieces; i++) {
      double degrees = 360.0 * i / pieces;
      double x = frame.x(degrees);
      double y = frame.yOn(degrees);
      line.add(i == 0 ? new MoveTo(x, y) : new LineTo(x, y));
    }
    wave.getElements().setAll(line);
  }

  private void placeMarks(Frame frame, double size) {
    int last = points.size() - 1;
    double radius = (points.size() < CROWD ? RADIUS_EMS : CROWDED_RADIUS_EMS) * size;
    for (int i = 0; i < last; i++) {
      add(marks, points.get(i), frame, radius);
    }
    ring.setVisible(last >= 0);
    drop.setVisible(last >= 0);
    if (last >= 0) {
      stress(points.get(last), frame, size);
    }
    marks.draw();
    latest.draw();
  }

  private void stress(WavePoint point, Frame frame, double size) {
    add(latest, point, frame, LATEST_RADIUS_EMS * size);
    double x = frame.x(point.angleDegrees());
    double y = frame.yOn(point.angleDegrees());
    ring.setCenterX(x);
    ring.setCenterY(y);
    ring.setRadius(1.6 * LATEST_RADIUS_EMS * size);
    drop.setStartX(x);
    drop.setEndX(x);
    drop.setStartY(0.2 * size);
    drop.setEndY(frame.bottom());
    String words = "trial " + point.number() + ": " + AngleCoverage.whole(point.angleDegrees());
    double row = 0.75 * size;
    type.placeBeside(words, "wave-latest", x - 0.5 * size, x + 0.5 * size, row, getWidth());
  }

  private static void add(MarkPaths to, WavePoint point, Frame frame, double radius) {
    double x = frame.x(point.angleDegrees());
    to.add(point.mark(), point.shape(), x, frame.yOn(point.angleDegrees()), radius);
  }

  /** Where angles and levels from -1 to 1 lie. */
  private record Frame(double left, double right, double top, double bottom) {

    double x(double degrees) {
      return left + degrees / 360 * (right - left);
    }

    double y(double level) {
      return (top + bottom) / 2 - level * (bottom - top) / 2;
    }

    double yOn(double degrees) {
      return y(Math.sin(Math.toRadians(degrees)));
    }
  }
}
