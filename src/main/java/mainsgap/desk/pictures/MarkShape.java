package mainsgap.desk.pictures;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import mainsgap.bench.TrialReport;
import mainsgap.transfer.outcome.Outcome;

/**
 * The shapes that stand for trials, of radius 1 about 0, 0. They are those of the published
 * figures, so that a trial is found again there.
 */
public enum MarkShape {
  /** Passed, or measured with nothing to judge by. */
  CIRCLE(circle()),
  /** Failed. */
  CROSS(
      -1, -0.6, -0.6, -1, 0, -0.4, 0.6, -1, 1, -0.6, 0.4, 0, 1, 0.6, 0.6, 1, 0, 0.4, -0.6, 1, -1,
      0.6, -0.4, 0),
  /** Neither shown to be within nor not to be. */
  TRIANGLE(0, -1, 0.95, 0.75, -0.95, 0.75),
  /** Refused. */
  DIAMOND(0, -1.1, 1, 0, 0, 1.1, -1, 0),
  /** No interruption. */
  SQUARE(-0.78, -0.78, 0.78, -0.78, 0.78, 0.78, -0.78, 0.78),
  /** No return: the time is at least as long. */
  ARROW(-1, -0.35, 0.1, -0.35, 0.1, -0.9, 1.2, 0, 0.1, 0.9, 0.1, 0.35, -1, 0.35);

  private static final int CORNERS_OF_CIRCLE = 24;
  private static final double RADIUS_OF_CIRCLE = 0.85;

  @SuppressWarnings("ImmutableEnumChecker") // an unmodifiable list
  private final List<Double> corners;

  MarkShape(double... corners) {
    this.corners = IntStream.range(0, corners.length).mapToObj(i -> corners[i]).toList();
  }

  /** The shape of a trial: how it ended, then how it was judged. */
  public static MarkShape of(TrialReport trial) {
    Outcome.Kind kind = trial.outcome().kind();
    return switch (kind) {
      case NO_RETURN -> ARROW;
      case NO_INTERRUPTION -> SQUARE;
      case MEASURED, REFUSED -> TrialMark.asMeasured(trial).shape();
    };
  }

  /** Its corners: x, y, x, y ... with y downwards. */
  public List<Double> corners() {
    return corners;
  }

  /** Its outline as an SVG path, for a region's {@code -fx-shape} or an {@code SVGPath}. */
  public String svgPath() {
    return IntStream.range(0, corners.size() / 2)
        .mapToObj(i -> String.format(Locale.ROOT, "%.3f %.3f", x(i), y(i)))
        .collect(Collectors.joining(" L ", "M ", " Z"));
  }

  private double x(int corner) {
    return corners.get(2 * corner);
  }

  private double y(int corner) {
    return corners.get(2 * corner + 1);
  }

  private static double[] circle() {
    double[] corners = new double[2 * CORNERS_OF_CIRCLE];
    for (int i = 0; i < CORNERS_OF_CIRCLE; i++) {
      double angle = 2 * Math.PI * i / CORNERS_OF_CIRCLE;
      corners[2 * i] = RADIUS_OF_CIRCLE * Math.cos(angle);
      corners[2 * i + 1] = RADIUS_OF_CIRCLE * Math.sin(angle);
    }
    return corners;
  }
}
