package mainsgap.desk.trials;

import javafx.animation.PauseTransition;
import javafx.beans.InvalidationListener;
import javafx.beans.binding.Bindings;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.Duration;
import org.jspecify.annotations.Nullable;

/**
 * Once a series is over: its last seal, large enough for a camera, where it is kept, and the ways
 * on.
 */
final class EndBoard {
  /** A key that was meant for what stood here before must not start another series. */
  private static final Duration FRESH_CHOICE = Duration.seconds(1);

  private static final String FRESH = "fresh";

  private final HBox node = new HBox();
  private final Label seal = new Label();
  private final Label file = new Label();
  private final FlowPane ways = new FlowPane();
  private final PauseTransition fresh = new PauseTransition(FRESH_CHOICE);
  private boolean isFresh;

  EndBoard(TrialsModel model, WaysOn choices) {
    node.setId("end");
    node.getStyleClass().add("end");
    seal.setId("last-seal");
    seal.getStyleClass().add("seal");
    seal.setMinHeight(Region.USE_PREF_SIZE);
    file.setId("session-file");
    file.getStyleClass().add("session-file");
    ways.getStyleClass().add("ways-on");
    fresh.setOnFinished(
        event -> {
          isFresh = true;
          node.getStyleClass().add(FRESH);
        });
    VBox kept = new VBox(seal, file);
    kept.setMinWidth(0);
    HBox.setHgrow(ways, Priority.ALWAYS);
    ways.setAlignment(Pos.CENTER_RIGHT);
    node.setAlignment(Pos.CENTER_LEFT);
    node.getChildren().addAll(kept, ways);
    node.managedProperty().bind(node.visibleProperty());
    seal.managedProperty().bind(seal.visibleProperty());
    file.managedProperty().bind(file.visibleProperty());
    node.visibleProperty()
        .bind(model.runningProperty().not().and(Bindings.isNotEmpty(model.waysOn())));
    model.book().evidenceProperty().addListener((property, was, is) -> show(is));
    show(model.book().evidenceProperty().get());
    model.waysOn().addListener((InvalidationListener) changed -> offer(model, choices));
  }

  Region node() {
    return node;
  }

  /** The likeliest way on takes the focus, so that Enter or the space bar is enough. */
  void focus() {
    if (!ways.getChildren().isEmpty()) {
      ways.getChildren().get(0).requestFocus();
    }
  }

  private void show(@Nullable Evidence evidence) {
    String last = evidence == null ? null : evidence.lastSeal();
    seal.setVisible(last != null);
    seal.setText(last == null ? "" : TrialWords.sealInGroups(last));
    seal.setAccessibleText(last == null ? "" : "last seal " + last);
    file.setVisible(evidence != null);
    file.setText(
        evidence == null ? "" : (last == null ? "Kept in " : "Last seal of ") + evidence.file());
  }

  private void take(WayOn way, WaysOn choices) {
    if (isFresh || !way.startsASeries()) {
      choices.take(way);
    }
  }

  private void offer(TrialsModel model, WaysOn choices) {
    isFresh = false;
    node.getStyleClass().remove(FRESH);
    fresh.playFromStart();
    ways.getChildren().clear();
    for (WayOn way : model.waysOn()) {
      Button button = new Button(way.words());
      button.setId(way.id());
      button.setOnAction(event -> take(way, choices));
      if (ways.getChildren().isEmpty()) {
        button.getStyleClass().add("accent");
      }
      ways.getChildren().add(button);
    }
  }
}
