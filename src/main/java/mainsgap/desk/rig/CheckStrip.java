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
import mainsgap.desk.manners.GrowingIcon;
import org.kordamp.ikonli.Ikon;
import org.kordamp.ikonli.javafx.FontIcon;
import org.kordamp.ikonli.material2.Material2AL;
import org.kordamp.ikonli.material2.Material2MZ;

/** At the foot of the page: how the rig stands, in words, and the check. */
final class CheckStrip extends HBox {
  private static final String CHECK = "Check the rig (F6)";
  private static final String STOP = "Stop looking";
  private static final double ICON_PART = 1.6;

  /** More findings are scrolled to. */
  private static final double MOST_EM = 7.5;

  private final RigModel model;
  private final Button check;
  private final FontIcon icon = new FontIcon();
  private final ProgressIndicator busy = new ProgressIndicator();
  private final Label headline = Rows.label("", "rig-headline");
  private final VBox lines = new VBox();

  CheckStrip(RigModel model, Runnable goToTrials) {
    this.model = model;
    getStyleClass().add("rig-strip");
    setFillHeight(false);
    setId("rig-strip");
    check = button("check-rig", CHECK, Material2AL.CHECK, this::checkOrStop);
    headline.setId("rig-headline");
    lines.setId("rig-findings");
    icon.getStyleClass().add("rig-strip-icon");
    GrowingIcon.follow(icon, headline, ICON_PART);
    VBox words = new VBox(headline, lines);
    ScrollPane scroll = new ScrollPane(words);
    scroll.setFitToWidth(true);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    scroll.setMinViewportHeight(1);
    scroll.setFocusTraversable(false);
    scroll.getStyleClass().add("rig-strip-words");
    words
        .heightProperty()
        .addListener(
            (property, was, is) ->
                scroll.setPrefViewportHeight(
                    Math.min(is.doubleValue(), MOST_EM * headline.getFont().getSize())));
    HBox.setHgrow(scroll, Priority.ALWAYS);
    getChildren().addAll(icon, busy, scroll, buttons(goToTrials));
    InvalidationListener show = change -> show();
    model.source().whyNotReady().addListener(show);
    model.lockedProperty().addListener(show);
    model.checking().runningProperty().addListener(show);
    model.checking().progressProperty().addListener(show);
    model.checking().endProperty().addListener(show);
    model.checking().outdatedProperty().addListener(show);
    show();
  }

  /** Gives the focus to what is to be done next. */
  void focus() {
    check.requestFocus();
  }

  private void checkOrStop() {
    if (model.checking().isRunning()) {
      model.checking().stop();
    } else {
      model.check();
    }
  }

  private HBox buttons(Runnable goToTrials) {
    check.disableProperty().bind(model.whyNoCheckProperty().isNotEmpty());
    Button keep =
        button("keep-looking", "Keep looking (F7)", Material2MZ.VISIBILITY, model::keepLooking);
    keep.disableProperty()
        .bind(model.whyNoCheckProperty().isNotEmpty().or(model.checking().runningProperty()));
    Button trials = button("to-trials", "To the trials", Material2AL.ARROW_FORWARD, goToTrials);
    HBox buttons = new HBox(check, keep, trials);
    buttons.getStyleClass().add("rig-strip-buttons");
    return buttons;
  }

  private static Button button(String id, String words, Ikon icon, Runnable deed) {
    Button button = new Button(words);
    FontIcon unused = GrowingIcon.beside(button, icon);
    button.setMinWidth(USE_PREF_SIZE);
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
    check.setText(model.checking().isRunning() ? STOP : CHECK);
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
