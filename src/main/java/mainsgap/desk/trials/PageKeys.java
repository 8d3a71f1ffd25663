package mainsgap.desk.trials;

import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import mainsgap.session.LoadFate;

/** The keys of the page. A letter is no command where words are written. */
final class PageKeys {
  private final TrialsModel model;
  private final Controls controls;
  private final Deeds deeds;
  private boolean enterIsHeld;

  PageKeys(TrialsModel model, Controls controls, Deeds deeds) {
    this.model = model;
    this.controls = controls;
    this.deeds = deeds;
  }

  void released(KeyEvent event) {
    if (event.getCode() == KeyCode.ENTER) {
      enterIsHeld = false;
    }
  }

  void pressed(KeyEvent event) {
    if (event.isConsumed() || event.isShortcutDown() || event.isAltDown()) {
      return;
    }
    boolean writing = event.getTarget() instanceof TextInputControl;
    if (function(event) || (!writing && letter(event))) {
      event.consume();
    }
  }

  /** An Enter that is held down repeats itself; it is one word, not many. */
  private void enter() {
    if (!enterIsHeld) {
      enterIsHeld = true;
      controls.goOnOrGiveTheWord();
    }
  }

  private boolean function(KeyEvent event) {
    switch (event.getCode()) {
      case F5 -> model.start();
      case F8 -> model.stop();
      default -> {
        return false;
      }
    }
    return true;
  }

  private boolean letter(KeyEvent event) {
    switch (event.getCode()) {
      case ENTER -> enter();
      case N -> deeds.note();
      case DELETE -> deeds.setAside();
      case Y -> deeds.load(LoadFate.RODE_THROUGH);
      case R -> deeds.load(LoadFate.RESET);
      case D -> deeds.load(LoadFate.DAMAGED);
      default -> {
        return false;
      }
    }
    return true;
  }
}
