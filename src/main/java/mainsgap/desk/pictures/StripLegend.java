package mainsgap.desk.pictures;

import java.util.List;
import java.util.stream.Stream;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.shape.Line;
import javafx.scene.shape.Path;
import javafx.scene.shape.Rectangle;

/** Says what the shapes and lines of a strip are, of those that are there. For the UI thread. */
final class StripLegend extends FlowPane {
  private static final double RADIUS = 6;
  private static final double LINE = 14;

  StripLegend() {
    setId("strip-legend");
    getStyleClass().add("strip-legend");
  }

  void show(StripScene scene) {
    getChildren().clear();
    Stream.of(TrialMark.values())
        .forEach(
            mark ->
                scene.points().stream()
                    .filter(point -> point.mark() == mark)
                    .map(StripPoint::shape)
                    .distinct()
                    .sorted()
                    .forEach(shape -> addMark(mark, shape)));
    boolean hasWhiskers = scene.points().stream().anyMatch(p -> p.uncertaintyMillis() > 0);
    if (hasWhiskers) {
      add("± U, where wider than its mark", styled(new Line(0, 0, LINE, 0), "strip-whiskers"));
    }
    if (scene.declaredMillis() != null) {
      add("declared time", styled(new Line(0, 0, 0, LINE), "strip-declared"));
    }
    if (scene.guardMillis() > 0) {
      add("guard band", styled(new Rectangle(LINE, LINE), "strip-guard"));
    }
    if (scene.boundMillis() != null) {
      add(
          "upper bound: 95 % of transfers below it, 95 % confidence",
          styled(new Line(0, 0, 0, LINE), "strip-bound"));
    }
  }

  private void addMark(TrialMark mark, MarkShape shape) {
    Path path = new Path();
    MarkPaths.addTo(path.getElements(), shape, 0, 0, RADIUS);
    path.getStyleClass().addAll("trial-mark", mark.styleClass());
    if (mark.isHollow()) {
      path.getStyleClass().add("hollow");
    }
    add(words(mark, shape), path);
  }

  private static String words(TrialMark mark, MarkShape shape) {
    return switch (shape) {
      case ARROW -> mark.words() + ", no return";
      case SQUARE -> mark.words() + ", no interruption";
      case CIRCLE, CROSS, TRIANGLE, DIAMOND -> mark.words();
    };
  }

  private void add(String words, Node graphic) {
    Label label = new Label(words, graphic);
    label.getStyleClass().add("picture-legend-entry");
    getChildren().add(label);
  }

  private static Node styled(Node node, String styleClass) {
    node.getStyleClass().addAll(List.of(styleClass));
    return node;
  }
}
