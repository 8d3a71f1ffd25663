package mainsgap.desk.trials;

import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import mainsgap.bench.RunningFigures;
import org.jspecify.annotations.Nullable;

/** Mean, spread, largest and the upper bound so far, and what they are worth against the claim. */
final class FiguresBoard {
  private final VBox node = new VBox();
  private final Label title = new Label();
  private final Label mean = figure("figure-mean");
  private final Label spread = figure("figure-spread");
  private final Label largest = figure("figure-largest");
  private final Label bound = figure("figure-bound");
  private final Label verdict = new Label();

  FiguresBoard(TrialBook book) {
    node.setId("figures");
    node.getStyleClass().add("figures");
    title.setId("series-title");
    title.getStyleClass().add("series-title");
    title.setWrapText(true);
    title.textProperty().bind(book.titleProperty());
    verdict.setId("series-verdict");
    verdict.getStyleClass().add("series-verdict");
    verdict.setWrapText(true);
    verdict.setMinHeight(Region.USE_PREF_SIZE);
    FlowPane figures =
        new FlowPane(
            named("mean", mean),
            named("spread (s)", spread),
            named("largest", largest),
            named("upper bound 95/95", bound));
    figures.getStyleClass().add("figures-row");
    node.getChildren().addAll(title, figures, verdict);
    book.figuresProperty().addListener((property, was, is) -> show(is));
    show(book.figuresProperty().get());
  }

  Region node() {
    return node;
  }

  private void show(RunningFigures figures) {
    mean.setText(TrialWords.millis(figures.meanMillis()));
    spread.setText(TrialWords.millis(figures.standardDeviationMillis()));
    largest.setText(TrialWords.millis(figures.maxMillis()));
    bound.setText(TrialWords.millis(figures.upperToleranceBoundMillis()));
    verdict.setText(verdict(figures));
  }

  private static String verdict(RunningFigures figures) {
    String reason = orEmpty(figures.reason());
    if (figures.verdict() == null) {
      return TrialWords.sentence(reason);
    }
    return figures.verdict() + (reason.isEmpty() ? "" : ": " + reason);
  }

  private static String orEmpty(@Nullable String words) {
    return words == null ? "" : words;
  }

  private static Label figure(String id) {
    Label figure = new Label();
    figure.setId(id);
    figure.getStyleClass().add("figure");
    figure.setMinWidth(Region.USE_PREF_SIZE);
    return figure;
  }

  private static Region named(String name, Label figure) {
    Label above = new Label(name);
    above.getStyleClass().add("figure-name");
    VBox pair = new VBox(above, figure);
    pair.getStyleClass().add("figure-pair");
    return pair;
  }
}
