package mainsgap.desk.findings;

import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import mainsgap.desk.manners.GrowingIcon;
import mainsgap.desk.pictures.TracePane;
import mainsgap.desk.trace.TraceScene;
import org.jspecify.annotations.Nullable;
import org.kordamp.ikonli.javafx.FontIcon;
import org.kordamp.ikonli.material2.Material2AL;

/** A trial opened again, with its raw capture. */
final class TrialView {
  private final OpenedTrial opened;
  private final TracePane trace = new TracePane();
  private final Label words = new Label();
  private final BorderPane node = new BorderPane();

  TrialView(OpenedTrial opened, Runnable back) {
    this.opened = opened;
    node.setId("opened-trial");
    node.getStyleClass().add("opened-trial");
    words.getStyleClass().add("heading");
    words.setMinWidth(0);
    words.setMaxWidth(Double.MAX_VALUE);
    HBox.setHgrow(words, Priority.ALWAYS);
    Button close = new Button("Back to the figure");
    FontIcon unused = GrowingIcon.beside(close, Material2AL.ARROW_BACK);
    close.setId("close-trial");
    close.setTooltip(new Tooltip("Back to the figure (Esc)"));
    close.setMinWidth(Region.USE_PREF_SIZE);
    close.setOnAction(event -> back.run());
    HBox head = new HBox(words, close);
    head.getStyleClass().add("file-door");
    node.setTop(head);
    node.setCenter(trace.node());
    node.setMinSize(0, 0);
    node.visibleProperty().bind(opened.trialProperty().isNotNull());
    opened.trialProperty().addListener((property, was, is) -> name(is));
    opened.sceneProperty().addListener((property, was, is) -> show(is));
    opened.whyNoneProperty().addListener((property, was, is) -> show(null));
  }

  Region node() {
    return node;
  }

  private void name(@Nullable TrialRow row) {
    words.setText(
        row == null
            ? ""
            : row.unit()
                + ", trial "
                + row.key().number()
                + " · "
                + row.words().statedTime()
                + " · "
                + row.words().result());
  }

  private void show(@Nullable TraceScene scene) {
    if (scene != null) {
      trace.show(scene);
      focus();
    } else if (!opened.whyNoneProperty().get().isEmpty()) {
      trace.clear(opened.whyNoneProperty().get());
    }
  }

  /** The picture takes the keys that move and zoom it. */
  private void focus() {
    if (trace.node().lookup(".trace-view") != null) {
      trace.node().lookup(".trace-view").requestFocus();
    }
  }
}
