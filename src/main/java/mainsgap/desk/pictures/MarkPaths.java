package mainsgap.desk.pictures;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import javafx.scene.Group;
import javafx.scene.shape.ClosePath;
import javafx.scene.shape.LineTo;
import javafx.scene.shape.MoveTo;
import javafx.scene.shape.Path;
import javafx.scene.shape.PathElement;

/**
 * All marks of a picture, as one outline for each kind: hundreds of trials are a handful of nodes.
 * For the UI thread.
 */
final class MarkPaths {
  private final Group group = new Group();
  private final Map<TrialMark, Path> paths = new EnumMap<>(TrialMark.class);
  private final Map<TrialMark, List<PathElement>> elements = new EnumMap<>(TrialMark.class);

  MarkPaths() {
    group.setManaged(false);
    for (TrialMark mark : TrialMark.values()) {
      Path path = new Path();
      path.setManaged(false);
      path.getStyleClass().addAll("trial-mark", mark.styleClass());
      if (mark.isHollow()) {
        path.getStyleClass().add("hollow");
      }
      paths.put(mark, path);
      elements.put(mark, new ArrayList<>());
      group.getChildren().add(path);
    }
  }

  Group node() {
    return group;
  }

  void add(TrialMark mark, MarkShape shape, double x, double y, double radius) {
    addTo(listOf(mark), shape, x, y, radius);
  }

  /** Draws what was added since the last time, and nothing else. */
  void draw() {
    paths.forEach(
        (mark, path) -> {
          path.getElements().setAll(listOf(mark));
          listOf(mark).clear();
        });
  }

  /** One shape as an outline. */
  static void addTo(List<PathElement> outline, MarkShape shape, double x, double y, double radius) {
    List<Double> corners = shape.corners();
    for (int i = 0; i < corners.size(); i += 2) {
      double cornerX = x + radius * corners.get(i);
      double cornerY = y + radius * corners.get(i + 1);
      outline.add(i == 0 ? new MoveTo(cornerX, cornerY) : new LineTo(cornerX, cornerY));
    }
    outline.add(new ClosePath());
  }

  private List<PathElement> listOf(TrialMark mark) {
    return elements.getOrDefault(mark, List.of());
  }
}
