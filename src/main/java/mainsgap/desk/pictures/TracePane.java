package mainsgap.desk.pictures;

import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import mainsgap.desk.trace.TraceScene;
import mainsgap.desk.trace.TraceView;
import mainsgap.signal.Capture;
import mainsgap.transfer.FittedSupplies;
import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.transfer.outcome.Outcome;
import org.jspecify.annotations.Nullable;

/**
 * The trace of one trial: time from the loss, the fitted supplies, the gap with its time, the
 * declared time from the same zero, and what is to be said of it in words. For the UI thread, but
 * for {@link #sceneOf}.
 */
public final class TracePane {
  private static final String KEYS = "← → move   + − zoom   Home gap   End whole record";

  private final TraceView view = new TraceView();
  private final Label remark = new Label();
  private final Label why = new Label();
  private final Button whole = new Button("Whole record");
  private final Button gap = new Button("Gap");
  private final BorderPane root = new BorderPane();

  /** An empty one. */
  public TracePane() {
    root.setId("trace-pane");
    root.getStyleClass().add("trace-pane");
    root.getStylesheets().add(Pictures.SHEET);
    why.setId("trace-why-none");
    why.getStyleClass().add("picture-none");
    why.setWrapText(true);
    remark.setId("trace-remark");
    remark.getStyleClass().add("trace-remark");
    remark.setWrapText(true);
    remark.managedProperty().bind(remark.visibleProperty());
    remark.visibleProperty().bind(remark.textProperty().isNotEmpty());
    StackPane middle = new StackPane(view, why);
    middle.setMinSize(0, 0);
    root.setCenter(middle);
    root.setBottom(new VBox(remark, bar()));
    clear("No trace yet.");
  }

  /** The picture, to be placed in a page. */
  public Region node() {
    return root;
  }

  /**
   * What {@link #show(TraceScene)} shows of a trial. Reads every sample and touches no control: for
   * any thread, and not for the UI thread where the capture is long.
   */
  public static TraceScene sceneOf(
      Capture capture, Outcome outcome, FittedSupplies supplies, @Nullable DeclaredClaim claim) {
    return OutcomeScene.of(capture, outcome, supplies, claim);
  }

  /** Builds and shows at once: for short captures. */
  public void show(
      Capture capture, Outcome outcome, FittedSupplies supplies, @Nullable DeclaredClaim claim) {
    show(sceneOf(capture, outcome, supplies, claim));
  }

  /** Shows a trial from its gap, or its whole record where nothing was found in it. */
  public void show(TraceScene scene) {
    boolean found = !scene.zeroWords().equals(Told.START_OF_RECORD);
    view.show(scene);
    if (!found) {
      view.showAll();
    }
    gap.setDisable(!found);
    gap.setText(scene.gap() == null && found ? "At the " + scene.zeroWords() : "Gap");
    whole.setDisable(false);
    remark.setText(scene.remark());
    why.setVisible(false);
    view.setVisible(true);
  }

  /** Shows no trace, and says why. */
  public void clear(String reason) {
    view.show(TraceScene.EMPTY);
    view.setVisible(false);
    gap.setDisable(true);
    whole.setDisable(true);
    remark.setText("");
    why.setText(reason);
    why.setVisible(true);
  }

  TraceView view() {
    return view;
  }

  private Region bar() {
    whole.setId("trace-whole-record");
    whole.setTooltip(new Tooltip("From the first sample to the last (End)"));
    whole.setOnAction(event -> view.showAll());
    gap.setId("trace-gap");
    gap.setTooltip(new Tooltip("The gap and the declared time with a cycle around them (Home)"));
    gap.setOnAction(event -> view.showFocus());
    Label keys = new Label(KEYS);
    keys.setId("trace-keys");
    keys.getStyleClass().add("picture-hint");
    keys.setMinWidth(0);
    keys.managedProperty().bind(keys.visibleProperty());
    whole.setMinWidth(Region.USE_PREF_SIZE);
    gap.setMinWidth(Region.USE_PREF_SIZE);
    Region room = new Region();
    HBox.setHgrow(room, Priority.ALWAYS);
    HBox bar = new HBox(gap, whole, room, keys);
    bar.setAlignment(Pos.CENTER_LEFT);
    bar.getStyleClass().add("trace-bar");
    keys.visibleProperty()
        .bind(
            bar.widthProperty()
                .greaterThan(
                    javafx.beans.binding.Bindings.createDoubleBinding(
                        () -> gap.getWidth() + whole.getWidth() + 1.2 * keys.prefWidth(-1),
                        gap.widthProperty(),
                        whole.widthProperty(),
                        keys.fontProperty())));
    return bar;
  }
}
