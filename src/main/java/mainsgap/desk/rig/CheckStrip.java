package mainsgap.desk.rig;

import java.util.List;
import java.util.Locale;
import javafx.beans.InvalidationListener;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressIndicator;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.kordamp.ikonli.Ikon;
import org.kordamp.ikonli.javafx.FontIcon;
import org.kordamp.ikonli.material2.Material2AL;
import org.kordamp.ikonli.material2.Material2MZ;

/** At the foot of the page: how the rig stands, in words, and the check. */
final class CheckStrip extends HBox {
  private final RigModel model;
  private final FontIcon icon = new FontIcon();
  private final ProgressIndicator busy = new ProgressIndicator();
  private final Label headline = Rows.label("", "rig-headline");
  private final VBox lines = new VBox();

  CheckStrip(RigModel model, Runnable goToTrials) {
    this.model = model;
    getStyleClass().add("rig-strip");
    setId("rig-strip");
    headline.setId("rig-headline");
    lines.setId("rig-findings");
    icon.getStyleClass().add("rig-strip-icon");
    VBox words = new VBox(headline, lines);
    ScrollPane scroll = new ScrollPane(words);
    scroll.setFitToWidth(true);
    scroll.setFocusTraversable(false);
    scroll.getStyleClass().add("rig-strip-words");
    HBox.setHgrow(scroll, Priority.ALWAYS);
    getChildren().addAll(icon, busy, scroll, buttons(goToTrials));
    InvalidationListener show = change -> show();
    model.source().whyNotReady().addListener(show);
    model.checking().runningProperty().addListener(show);
    model.checking().progressProperty().addListener(show);
    model.checking().endProperty().addListener(show);
    model.checking().outdatedProperty().addListener(show);
    show();
  }

  private VBox buttons(Runnable goToTrials) {
    Button check = button("check-rig", "Check the rig (F6)", Material2AL.CHECK, model::check);
    check.disableProperty().bind(model.whyNoCheckProperty().isNotEmpty());
    check.visibleProperty().bind(model.checking().runningProperty().not());
    check.managedProperty().bind(check.visibleProperty());
    Button stop = button("stop-check", "Stop the check", Material2MZ.STOP, model.checking()::stop);
    stop.visibleProperty().bind(model.checking().runningProperty());
    stop.managedProperty().bind(stop.visibleProperty());
    Button trials = button("to-trials", "To the trials", Material2AL.ARROW_FORWARD, goToTrials);
    VBox buttons = new VBox(check, stop, trials);
    buttons.getStyleClass().add("rig-strip-buttons");
    return buttons;
  }

  private static Button button(String id, String words, Ikon icon, Runnable deed) {
    Button button = new Button(words, new FontIcon(icon));
    button.setId(id);
    button.setMaxWidth(Double.MAX_VALUE);
    button.setOnAction(event -> deed.run());
    return button;
  }

  private void show() {
    CheckStory story = CheckStory.of(model);
    getStyleClass().removeIf(style -> style.startsWith("look-"));
    getStyleClass().add("look-" + story.look().name().toLowerCase(Locale.ROOT).replace('_', '-'));
    headline.setText(Rows.capital(story.headline()));
    lines.getChildren().setAll(lines(story.lines()));
    boolean isBusy = story.look() == CheckStory.Look.BUSY;
    busy.setVisible(isBusy);
    busy.setManaged(isBusy);
    icon.setVisible(!isBusy);
    icon.setManaged(!isBusy);
    icon.setIconCode(
        switch (story.look()) {
          case TO_DO, BUSY -> Material2AL.INFO;
          case RIGHT -> Material2AL.CHECK_CIRCLE;
          case WRONG -> Material2MZ.WARNING;
        });
  }

  private static List<Label> lines(List<CheckStory.Line> lines) {
    return lines.stream()
        .map(
            line ->
                Rows.label(
                    (line.mustBeMended() ? "▲ " : "· ") + Rows.capital(line.sentence()),
                    line.mustBeMended() ? "rig-must" : "rig-note"))
        .toList();
  }
}
