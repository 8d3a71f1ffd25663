package mainsgap.desk.rig;

import java.util.ArrayList;
import java.util.List;
import javafx.beans.InvalidationListener;
import javafx.beans.binding.Bindings;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;

/** The cautions, each with its tick; one key reads one and goes on to the next. */
final class CautionsForm {
  private final CautionTicks cautions;
  private final Runnable allRead;
  private final Rows rows;
  private final List<CheckBox> ticks = new ArrayList<>();

  /** {@code allRead} runs once the last one is ticked here. */
  CautionsForm(RigModel model, Runnable allRead) {
    this.allRead = allRead;
    cautions = model.cautions();
    rows = new Rows(model.lockedProperty());
    InvalidationListener show = change -> show();
    cautions.list().addListener(show);
    show();
  }

  Rows rows() {
    return rows;
  }

  /** Gives the focus to the first that is not read. */
  void focusOnNext() {
    ticks.stream()
        .filter(tick -> !tick.isSelected())
        .findFirst()
        .or(() -> ticks.stream().findFirst())
        .ifPresent(CheckBox::requestFocus);
  }

  private void show() {
    rows.getChildren().clear();
    ticks.clear();
    Label left = rows.note("");
    left.setId("cautions-left");
    left.textProperty().bind(Bindings.createStringBinding(this::left, cautions.leftProperty()));
    int number = 0;
    for (CautionTicks.Caution caution : cautions.list()) {
      number++;
      CheckBox tick = new CheckBox(caution.words());
      tick.setId("caution-" + number);
      tick.setWrapText(true);
      tick.getStyleClass().add("rig-caution");
      tick.selectedProperty().bindBidirectional(caution.read());
      tick.setOnAction(event -> goOn(tick));
      ticks.add(tick);
      rows.add(tick);
    }
  }

  private void goOn(CheckBox from) {
    if (!from.isSelected()) {
      return;
    }
    ticks.stream()
        .skip(ticks.indexOf(from))
        .filter(tick -> !tick.isSelected())
        .findFirst()
        .ifPresentOrElse(CheckBox::requestFocus, this::focusOnFirst);
  }

  private void focusOnFirst() {
    if (cautions.areRead()) {
      allRead.run();
    } else {
      focusOnNext();
    }
  }

  private String left() {
    int open = cautions.leftProperty().get();
    return open == 0
        ? "All are read, for as long as the program runs. The session says so."
        : "Read each, and tick it with the space bar: "
            + open
            + (open == 1 ? " is left." : " are left.")
            + " Nothing is armed before. On the simulated bench nothing is live, but the habit is"
            + " the same; on a real rig you are asked again.";
  }
}
