package mainsgap.desk.manners;

import java.util.Map;
import javafx.scene.input.KeyCombination;
import javafx.scene.layout.Region;
import org.kordamp.ikonli.Ikon;

/** One page of the window. */
public interface Page {

  /** Its name, in a word. */
  String title();

  /** Beside its name. */
  Ikon icon();

  /** What it shows; always the same. */
  Region node();

  /** It has come to the front: gives the focus to where the work goes on. */
  void shown();

  /** Keys that work whichever page is at the front, and bring this one there. */
  default Map<KeyCombination, Runnable> keysOfTheWindow() {
    return Map.of();
  }

  /** The process is being ended, on another thread: makes safe what runs, within its own limit. */
  default void makeSafe() {}

  /** The window closes: stops what runs, within its own limit, and keeps what is not yet kept. */
  void closing();
}
