package mainsgap.desk.pictures;

import java.util.List;
import java.util.stream.Stream;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.shape.Line;
import javafx.scene.shape.Path;
import javafx.scene.shape.Rectangle;
import javafx.scene.text.Text;

/** Says what the shapes and lines of a strip are, of those that are there. For the UI thread. */
final class StripLegend extends FlowPane {
  private static final double RADIUS_EMS = 0.42;
  private static final double LINE_EMS = 1;

  private final Text em = new Text("0");
  private StripScene scene = StripScene.EMPTY;
  private double radius;
  private double line;

  StripLegend() {
    em.setManaged(false);
    em.setVisible(false);
    em.fontProperty().addListener((property, was, is) -> show(scene));
    setId("strip-legend");
    getStyleClass().add("strip-legend");
  }

  void show(StripScene shown) {
    scene = shown;
    radius = RADIUS_EMS * em.getFont().getSize();
    line = LINE_EMS * em.getFont().getSize();
    getChildren().setAll(em);
    Stream.of(TrialMark.values())
        .forEach(
            mark ->
                scene.points().stream()
                    .filter(point -> point.mark() == mark)
                    .map(StripPoint::shape)
                    .distinct()
                    .sorted()
                    .forEach(shape -> addMark(mark, shape)));
    double most = scene.largestUncertaintyMillis();
    if (most > 0) {
      add(
          "± U, at most " + MillisWords.uncertainty(most),
          styled(new Line(0, 0, line, 0), "strip-whiskers"));
    }
    if (scene.declaredMillis() != null) {
      add("declared time", styled(new Line(0, 0, 0, line), "strip-declared"));
    }
    if (scene.guardMillis() > 0) {
      add(
          "guard band, ± " + MillisWords.uncertainty(scene.guardMillis()),
          styled(new Rectangle(line, line), "strip-guard"));
    }
    if (scene.boundMillis() != null) {
      add(
          "upper bound: 95 % of transfers, 95 % confidence",
          styled(new Line(0, 0, 0, line), "strip-bound"));
    }
  }

  private void addMark(TrialMark mark, MarkShape shape) {
    Path path = new Path();
    MarkPaths.addTo(path.getElements(), shape, 0, 0, radius);
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
