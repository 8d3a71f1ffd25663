package mainsgap.desk.pictures;

import java.util.List;
import javafx.scene.control.Label;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.Region;
import mainsgap.bench.TrialReport;

/**
 * One cycle of the supply before, with a mark where each loss fell, the latest one stressed, and
 * how well they cover the cycle. For the UI thread.
 */
public final class WavePicture {
  private final WavePlot plot = new WavePlot();
  private final Label words = new Label();
  private final BorderPane root = new BorderPane(plot);

  /** A wave without marks. */
  public WavePicture() {
    root.setId("wave-picture");
    root.getStyleClass().add("wave-picture");
    root.getStylesheets().add(Pictures.SHEET);
    words.setId("wave-words");
    words.setWrapText(true);
    root.setTop(words);
    show(List.of());
  }

  /** The picture, to be placed in a page. */
  public Region node() {
    return root;
  }

  /** Shows where these trials were lost; those set aside are drawn and do not count. */
  public void show(List<TrialReport> trials) {
    List<WavePoint> points = WavePoint.of(trials);
    AngleCoverage coverage =
        AngleCoverage.of(
            points.stream()
                .filter(point -> point.mark() != TrialMark.SET_ASIDE)
                .map(WavePoint::angleDegrees)
                .toList());
    words.setText(coverage.words());
    plot.show(points, coverage.words());
  }
}
