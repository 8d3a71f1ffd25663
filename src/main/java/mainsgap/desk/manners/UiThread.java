package mainsgap.desk.manners;

import javafx.application.Platform;

/** The thread on which all that is shown changes. */
@FunctionalInterface
public interface UiThread {

  /** Runs {@code change} there, soon and in the order of the calls. Any thread may call it. */
  void run(Runnable change);

  /** The one of the toolkit; what comes from that thread itself runs at once. */
  static UiThread ofToolkit() {
    return change -> {
      if (Platform.isFxApplicationThread()) {
        change.run();
      } else {
        Platform.runLater(change);
      }
    };
  }
}
