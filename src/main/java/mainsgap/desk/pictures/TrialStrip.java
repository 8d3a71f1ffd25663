package mainsgap.desk.pictures;

import java.util.List;
import java.util.stream.IntStream;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.scene.Cursor;
import javafx.scene.control.Label;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import mainsgap.bench.RunningFigures;
import mainsgap.bench.TrialReport;
import mainsgap.transfer.claim.DeclaredClaim;
import org.jspecify.annotations.Nullable;

/**
 * All trials on one millisecond axis, with the declared time, its guard band and the upper bound so
 * far. A click or the arrow keys choose a trial. For the UI thread.
 */
public final class TrialStrip {
  private final StripPlot plot = new StripPlot();
  private final StripLegend legend = new StripLegend();
  private final Label counts = new Label();
  private final Label chosenWords = new Label();
  private final BorderPane root = new BorderPane(plot);
  private final ReadOnlyObjectWrapper<@Nullable Integer> chosen = new ReadOnlyObjectWrapper<>();
  private StripScene scene = StripScene.EMPTY;
  private List<TrialReport> trials = List.of();

  /** A strip without trials. */
  public TrialStrip() {
    root.setId("trial-strip");
    root.getStyleClass().add("trial-strip");
    root.getStylesheets().add(Pictures.SHEET);
    counts.setId("strip-counts");
    counts.setMinWidth(0);
    counts.setWrapText(true);
    chosenWords.setId("strip-chosen");
    chosenWords.setMinWidth(Region.USE_PREF_SIZE);
    Region room = new Region();
    HBox.setHgrow(room, Priority.ALWAYS);
    HBox head = new HBox(counts, room, chosenWords);
    head.getStyleClass().add("strip-head");
    root.setTop(head);
    root.setBottom(legend);
    plot.setId("strip-plot");
    plot.setOnMouseClicked(this::click);
    plot.setOnMouseMoved(this::point);
    plot.setOnKeyPressed(this::key);
    show(List.of(), null, RunningFigures.NONE);
  }

  /** The picture, to be placed in a page. */
  public Region node() {
    return root;
  }

  /** Shows these trials; the chosen one stays so while it is among them. */
  public void show(List<TrialReport> shown, @Nullable DeclaredClaim claim, RunningFigures figures) {
    trials = List.copyOf(shown);
    scene = StripScene.of(trials, claim, figures);
    counts.setText(scene.counts());
    legend.show(scene);
    choose(chosen.get());
  }

  /** The number of the chosen trial; null for none. */
  public ReadOnlyObjectProperty<@Nullable Integer> chosenProperty() {
    return chosen.getReadOnlyProperty();
  }

  /** Chooses a trial by its number; none for null and for one that is not shown. */
  public void choose(@Nullable Integer trialNumber) {
    StripPoint point = scene.point(trialNumber);
    Integer number = point == null ? null : (Integer) point.number();
    chosenWords.setText(
        trials.stream()
            .filter(trial -> number != null && trial.number() == number)
            .map(MillisWords::trial)
            .findFirst()
            .orElse(""));
    plot.show(scene, number);
    chosen.set(number);
  }

  private void click(MouseEvent event) {
    plot.requestFocus();
    StripLayout.Placed near = plot.places().near(event.getX(), event.getY());
    choose(near == null ? null : (Integer) near.point().number());
    event.consume();
  }

  private void point(MouseEvent event) {
    boolean over = plot.places().near(event.getX(), event.getY()) != null;
    plot.setCursor(over ? Cursor.HAND : Cursor.DEFAULT);
  }

  private void key(KeyEvent event) {
    if (event.isShortcutDown() || event.isAltDown()) {
      return;
    }
    boolean known = true;
    switch (event.getCode()) {
      case LEFT, KP_LEFT -> step(-1);
      case RIGHT, KP_RIGHT -> step(1);
      case HOME -> chooseAt(0);
      case END -> chooseAt(scene.points().size() - 1);
      default -> known = false;
    }
    if (known) {
      event.consume();
    }
  }

  /** From the chosen one to its neighbour by number; where none is, to the last or the first. */
  private void step(int by) {
    int last = scene.points().size() - 1;
    StripPoint now = scene.point(chosen.get());
    int at = now == null ? -1 : indexOf(now);
    chooseAt(now == null ? (by < 0 ? last : 0) : Math.max(0, Math.min(last, at + by)));
  }

  private int indexOf(StripPoint point) {
    return IntStream.range(0, scene.points().size())
        .filter(i -> scene.points().get(i).number() == point.number())
        .findFirst()
        .orElse(0);
  }

  private void chooseAt(int index) {
    if (index >= 0 && index < scene.points().size()) {
      choose(scene.points().get(index).number());
    }
  }
}
