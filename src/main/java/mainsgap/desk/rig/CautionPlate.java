package mainsgap.desk.rig;

import javafx.beans.binding.Bindings;
import javafx.css.PseudoClass;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** The plate beside the rig that says what it can do to a person. */
final class CautionPlate extends Button {
  private static final PseudoClass READ = PseudoClass.getPseudoClass("read");

  private final CautionTicks ticks;

  CautionPlate(CautionTicks ticks, Runnable open) {
    this.ticks = ticks;
    setId("cautions");
    getStyleClass().setAll("rig-plate");
    Region triangle = new Region();
    triangle.getStyleClass().add("rig-triangle");
    Label kills = Rows.label("120/230 V kills", "rig-plate-title");
    Label hands =
        Rows.label(
            "The unit's output stays live from its battery with the wall plug out.",
            "rig-plate-words");
    Label left = Rows.label("", "rig-plate-left");
    left.textProperty().bind(Bindings.createStringBinding(this::left, ticks.leftProperty()));
    VBox words = new VBox(triangle, kills, hands, left);
    words.getStyleClass().add("rig-plate-content");
    setGraphic(words);
    accessibleTextProperty().bind(left.textProperty());
    ticks.leftProperty().addListener((property, was, is) -> showRead());
    setOnAction(event -> open.run());
    showRead();
  }

  private void showRead() {
    pseudoClassStateChanged(READ, ticks.areRead());
  }

  private String left() {
    int all = ticks.list().size();
    int read = all - ticks.leftProperty().get();
    if (read == 0) {
      return "Read the " + all + " cautions before anything is armed";
    }
    return read == all
        ? "All " + all + " cautions are read"
        : read + " of " + all + " cautions are read: go on";
  }
}
