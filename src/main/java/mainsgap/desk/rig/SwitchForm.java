package mainsgap.desk.rig;

import java.util.LinkedHashMap;
import java.util.Map;
import javafx.beans.binding.Bindings;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import mainsgap.bench.CatchWish;
import mainsgap.bench.RigCheckEnd;

/** How often mains is switched, what moves it, and how the event is caught. */
final class SwitchForm {
  private final RigModel model;

  SwitchForm(RigModel model) {
    this.model = model;
  }

  Rows rows() {
    SwitchFields fields = model.fields().mainsSwitch;
    Rows rows = new Rows(model.lockedProperty());
    rows.typed(fields.trials, "Trials in a series", Integer.toString(SwitchFields.USUAL_TRIALS));
    rows.oneOf(fields.event, "What is measured", PartForms.events());
    rows.heading("How it is caught");
    rows.chosen(fields.catching, "Way into the record", ways());
    Label blind = rows.note("");
    blind.setId("blind-zone");
    blind
        .textProperty()
        .bind(
            Bindings.createStringBinding(
                this::blindZone,
                fields.catching.valueProperty(),
                model.checking().endProperty(),
                model.checking().outdatedProperty()));
    rows.heading("What moves the switch");
    Label mover = rows.note("");
    mover.setId("what-moves-the-switch");
    mover
        .textProperty()
        .bind(Bindings.createStringBinding(this::mover, model.stateOf(Part.SWITCH)));
    rows.add(byHand());
    return rows;
  }

  private Button byHand() {
    Button byHand = new Button("Let a hand move it instead");
    byHand.setId("move-by-hand");
    byHand.disableProperty().bind(model.lockedProperty());
    byHand
        .visibleProperty()
        .bind(
            Bindings.createBooleanBinding(
                () -> model.fields().kept().isSwitchCommanded(), model.stateOf(Part.SWITCH)));
    byHand.managedProperty().bind(byHand.visibleProperty());
    byHand.setOnAction(event -> model.fields().moveByHand());
    return byHand;
  }

  private String blindZone() {
    RigCheckEnd end = model.checking().endProperty().get();
    RigCheckEnd.Seen seen = end == null ? null : end.seen();
    if (seen != null && !model.checking().outdatedProperty().get()) {
      return "This scope: "
          + seen.method()
          + ". Blind zone: "
          + seen.blindZone()
          + ". "
          + String.join(". ", seen.explanation().stream().map(Rows::capital).toList())
          + ".";
    }
    return CatchWords.of(model.fields().mainsSwitch.catching.valueOr(CatchWish.AUTOMATIC))
        + " Check the rig to see what this scope would do.";
  }

  private String mover() {
    return model.fields().kept().isSwitchCommanded()
        ? "The program: "
            + model.fields().kept().switchWords()
            + ". It stands in the rig file under [mains-switch]; change it there. The emergency stop"
            + " is yours, and must not need this program."
        : "Your hand, on a rated two-pole switch: never pull a plug or a loose wire. A switch that"
            + " the program moves is written into the rig file, under [mains-switch].";
  }

  private static Map<String, String> ways() {
    Map<String, String> words = new LinkedHashMap<>();
    for (CatchWish wish : CatchWish.values()) {
      words.put(wish.word(), CatchWords.name(wish));
    }
    return words;
  }
}
