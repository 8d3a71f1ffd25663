package mainsgap.desk.trials;

import javafx.animation.PauseTransition;
import javafx.beans.binding.Bindings;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.OverrunStyle;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.Duration;
import mainsgap.desk.manners.GrowingIcon;
import mainsgap.session.LoadFate;
import org.kordamp.ikonli.Ikon;
import org.kordamp.ikonli.javafx.FontIcon;
import org.kordamp.ikonli.material2.Material2MZ;

/** The buttons, each with its key, and what was last said. */
final class Controls {
  /** A key that was meant for what stood here before must not close mains. */
  private static final Duration FRESH_WORD = Duration.seconds(1);

  private final TrialsModel model;
  private final WaysOn ways;
  private final VBox node = new VBox();
  private final Button start = button("start", "Start (F5)", Material2MZ.PLAY_ARROW);
  private final Button word =
      button("let-mains-close", "Let mains close (Enter)", Material2MZ.POWER);

  Controls(TrialsModel model, Deeds deeds, WaysOn ways) {
    this.model = model;
    this.ways = ways;
    node.getStyleClass().add("controls");
    FlowPane buttons = new FlowPane(start(), stop(), goOn(), word());
    buttons.getChildren().addAll(aboutTrial(deeds));
    buttons.getStyleClass().add("controls-buttons");
    buttons.setAlignment(Pos.CENTER_LEFT);
    HBox.setHgrow(buttons, Priority.ALWAYS);
    HBox row = new HBox(buttons, emergency());
    row.getStyleClass().add("controls-row");
    row.setAlignment(Pos.CENTER_LEFT);
    node.getChildren().addAll(row, said());
  }

  Region node() {
    return node;
  }

  void focusStart() {
    start.requestFocus();
  }

  /** Gives the word that is asked for, or ends the settling time. */
  void goOnOrGiveTheWord() {
    if (model.course().wordAskedProperty().get()) {
      word.fire();
    } else {
      model.goOn();
    }
  }

  private Button start() {
    start.getStyleClass().add("accent");
    start.setOnAction(event -> model.start());
    start
        .disableProperty()
        .bind(model.runningProperty().or(Bindings.isNotEmpty(model.whyNotReadyProperty())));
    return start;
  }

  private Button stop() {
    Button stop = button("stop", "Stop (F8)", Material2MZ.STOP);
    stop.setTooltip(new Tooltip("Ends the series; what was measured stays in the session"));
    stop.setOnAction(event -> model.stop());
    stop.disableProperty()
        .bind(model.runningProperty().not().or(model.course().stoppingProperty()));
    return stop;
  }

  private Button goOn() {
    Button goOn = button("go-on", "Go on (Enter)", Material2MZ.SKIP_NEXT);
    goOn.setTooltip(new Tooltip("Ends the settling time"));
    goOn.setOnAction(event -> model.goOn());
    goOn.disableProperty()
        .bind(
            Bindings.createBooleanBinding(
                () -> {
                  var wait = model.course().waitProperty().get();
                  return wait == null || !wait.canBeCutShort();
                },
                model.course().waitProperty()));
    return goOn;
  }

  private Button word() {
    word.getStyleClass().add("danger");
    word.setOnAction(event -> model.letMainsClose());
    word.visibleProperty().bind(model.course().wordAskedProperty());
    word.managedProperty().bind(word.visibleProperty());
    word.setDisable(true);
    PauseTransition fresh = new PauseTransition(FRESH_WORD);
    fresh.setOnFinished(event -> word.setDisable(false));
    model
        .course()
        .wordAskedProperty()
        .addListener(
            (property, was, is) -> {
              word.setDisable(true);
              fresh.stop();
              if (is) {
                fresh.playFromStart();
              }
            });
    return word;
  }

  private Region[] aboutTrial(Deeds deeds) {
    Button note = plain("note", "Note (N)");
    note.setOnAction(event -> deeds.note());
    Button aside = plain("set-aside", "Set aside (Del)");
    aside.setTooltip(new Tooltip("The chosen trial no longer counts; it stays in the session"));
    aside.setOnAction(event -> deeds.setAside());
    Label load = new Label("Load:");
    HBox fates = new HBox(load);
    fates.getStyleClass().add("load-fates");
    fates.setAlignment(Pos.CENTER_LEFT);
    fates.getChildren().addAll(fate(deeds, LoadFate.RODE_THROUGH, "rode through (Y)"));
    fates.getChildren().addAll(fate(deeds, LoadFate.RESET, "reset (R)"));
    fates.getChildren().addAll(fate(deeds, LoadFate.DAMAGED, "damaged (D)"));
    for (Region region : new Region[] {aside, fates}) {
      region.disableProperty().bind(Bindings.isEmpty(model.book().trials()));
    }
    return new Region[] {note, aside, fates};
  }

  private static Button fate(Deeds deeds, LoadFate fate, String words) {
    Button button = plain("load-" + fate.words().replace(' ', '-'), words);
    button.setAccessibleText("The load " + fate.words());
    button.setOnAction(event -> deeds.load(fate));
    return button;
  }

  private Button emergency() {
    Button off = button("emergency-off", "EMERGENCY OFF (F12)", Material2MZ.POWER_OFF);
    off.getStyleClass().addAll("danger", "emergency");
    off.setOnAction(event -> model.emergencyOff());
    off.disableProperty().bind(model.runningProperty().not());
    return off;
  }

  private Region said() {
    Label complaint = new Label();
    complaint.setId("complaint");
    complaint.getStyleClass().add("complaint");
    complaint.textProperty().bind(model.complaintProperty());
    complaint.visibleProperty().bind(complaint.textProperty().isNotEmpty());
    complaint.managedProperty().bind(complaint.visibleProperty());
    Label note = new Label();
    note.setId("note-said");
    note.getStyleClass().add("note-said");
    note.textProperty().bind(model.course().noteProperty());
    Region space = new Region();
    HBox.setHgrow(space, Priority.ALWAYS);
    HBox line = new HBox(complaint, note, space, folder());
    line.getStyleClass().add("said");
    line.setAlignment(Pos.CENTER_LEFT);
    return line;
  }

  private Button folder() {
    Button folder = plain("session-folder", "");
    folder.getStyleClass().add("session-folder");
    folder
        .textProperty()
        .bind(Bindings.concat("New sessions go to ", model.folder().property(), " – change…"));
    folder.setMinWidth(0);
    folder.setTextOverrun(OverrunStyle.CENTER_ELLIPSIS);
    folder.setOnAction(event -> ways.askForFolder().ifPresent(model.folder()::choose));
    folder.disableProperty().bind(model.runningProperty());
    return folder;
  }

  private static Button button(String id, String words, Ikon icon) {
    Button button = plain(id, words);
    FontIcon unused = GrowingIcon.beside(button, icon);
    return button;
  }

  private static Button plain(String id, String words) {
    Button button = new Button(words);
    button.setId(id);
    button.setMinWidth(Region.USE_PREF_SIZE);
    return button;
  }
}
