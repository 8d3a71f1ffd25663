package mainsgap.desk.rig;

import java.util.LinkedHashMap;
import java.util.Map;
import javafx.beans.binding.Bindings;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import mainsgap.bench.ProbedChannel.Category;

/** The settings of what is clipped to the rig. */
final class ClipForms {
  private final RigModel model;

  ClipForms(RigModel model) {
    this.model = model;
  }

  Rows clip(Part part) {
    ClipFields clip = model.fields().clip(part);
    Rows rows = new Rows(model.lockedProperty());
    rows.note(about(part));
    if (!clip.isNeeded()) {
      rows.add(connected(part, clip.connected));
    }
    rows.add(probe(clip));
    danger(rows, part);
    return rows;
  }

  private Rows probe(ClipFields clip) {
    Rows rows =
        new Rows(
            model
                .lockedProperty()
                .or(
                    Bindings.createBooleanBinding(
                        () -> !clip.isConnected(), clip.connected.textProperty())));
    rows.typed(clip.number, "Channel of the scope", "1");
    rows.typed(
        clip.probeFactor, "Probe factor (volts at the tip for each volt at the input)", "100");
    rows.chosen(clip.category, "Rated for (its weakest part)", categories());
    rows.typed(clip.ratedVolts, "Rated to earth, V RMS", "600");
    return rows;
  }

  Rows clamp() {
    ClampFields clamp = model.fields().clamp;
    Rows rows = new Rows(model.lockedProperty());
    rows.note(
        "A clamp around one line of the load tells whether there is a load at all, and whether it"
            + " rode through. It must be rated for the conductor.");
    rows.add(connected(Part.CURRENT_CLAMP, clamp.connected));
    rows.add(scale(clamp));
    return rows;
  }

  private Rows scale(ClampFields clamp) {
    Rows rows =
        new Rows(
            model
                .lockedProperty()
                .or(
                    Bindings.createBooleanBinding(
                        () -> !clamp.isConnected(), clamp.connected.textProperty())));
    rows.typed(clamp.number, "Channel of the scope", "4");
    rows.typed(clamp.amperesPerVolt, "Amperes in the line for each volt at the input", "10");
    rows.typed(clamp.peakAmperes, "Largest current it will see, A peak", "5");
    return rows;
  }

  private void danger(Rows rows, Part part) {
    rows.heading("What you touch there");
    Label danger = rows.note("");
    danger.setId(part.id() + "-danger");
    danger
        .textProperty()
        .bind(
            Bindings.createStringBinding(
                () -> model.stateOf(part).get().danger().words(), model.stateOf(part)));
    Rows.showWhileSaid(danger);
    rows.note(
        "Clip on with everything off: the wall plug out, and the unit stopped and discharged. The"
            + " probe's ground clip is protective earth; measure line to neutral with a differential"
            + " probe.");
  }

  private CheckBox connected(Part part, Field<String> field) {
    CheckBox connected = new CheckBox("It is connected");
    connected.setId(part.id() + "-connected");
    connected.setSelected(field.text().equals(ClipFields.YES));
    connected.disableProperty().bind(model.lockedProperty());
    connected
        .selectedProperty()
        .addListener((property, was, is) -> field.type(is ? ClipFields.YES : ClipFields.NO));
    field
        .textProperty()
        .addListener((property, was, is) -> connected.setSelected(ClipFields.YES.equals(is)));
    return connected;
  }

  private static String about(Part part) {
    return switch (part) {
      case MAINS_CLIP ->
          "Watches mains, downstream of the switch. With it the program sees that mains is back, and"
              + " can prove a loss where the load saw no gap.";
      case OUTPUT_CLIP -> "Watches the unit's output, at the load: this is what is measured.";
      case SECOND_LEG_CLIP -> "Watches the second leg of a split output.";
      case WALL, SWITCH, UNIT, LOAD, CURRENT_CLAMP, SCOPE ->
          throw new IllegalArgumentException(part + " is no clip");
    };
  }

  private static Map<String, String> categories() {
    Map<String, String> words = new LinkedHashMap<>();
    words.put(ClipFields.word(Category.CAT_II), "CAT II: at an outlet");
    words.put(ClipFields.word(Category.CAT_III), "CAT III: in the installation");
    words.put(ClipFields.word(Category.CAT_IV), "CAT IV: at its source");
    return words;
  }
}
