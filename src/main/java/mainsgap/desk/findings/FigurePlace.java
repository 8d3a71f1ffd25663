package mainsgap.desk.findings;

import javafx.beans.binding.Bindings;
import javafx.scene.control.Label;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;

/**
 * The figure, or words in its place: what to do so that there is one; or the trial opened again.
 */
final class FigurePlace {
  private static final String NOTHING_OPEN =
      """
      No session is open.

      Drop session files here, press Ctrl O to choose some, or type a path at the left.
      A series on the page Trials makes a session.""";

  private final FindingsModel model;
  private final StackPane node;

  FigurePlace(FindingsModel model, Region trial) {
    this.model = model;
    Label words = new Label();
    words.setId("figure-words");
    words.setWrapText(true);
    words
        .textProperty()
        .bind(
            Bindings.createStringBinding(
                this::words,
                model.easel().pictureProperty(),
                model.easel().whyNoneProperty(),
                model.shelf().readingProperty(),
                model.shelf().sessions()));
    words.visibleProperty().bind(words.textProperty().isNotEmpty());
    StackPane figure = new StackPane(new FigureView(model.easel()), words);
    figure.setMinSize(0, 0);
    figure.visibleProperty().bind(trial.visibleProperty().not());
    node = new StackPane(figure, trial);
    node.getStyleClass().add("figure-place");
    node.setMinSize(0, 0);
  }

  Region node() {
    return node;
  }

  private String words() {
    String why = model.easel().whyNoneProperty().get();
    if (!why.isEmpty()) {
      return why;
    }
    if (model.shelf().readingProperty().get() > 0
        || model.easel().pictureProperty().get() != null) {
      return "";
    }
    if (model.shelf().sessions().isEmpty()) {
      return NOTHING_OPEN;
    }
    return model.easel().order() == null
        ? "No session is shown: tick one at the left, or press space on it."
        : "";
  }
}
