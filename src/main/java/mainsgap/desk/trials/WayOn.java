package mainsgap.desk.trials;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import mainsgap.bench.SeriesEnd;

/** What can be done once a series has ended. */
enum WayOn {
  OPEN_FINDINGS("Open in Findings"),
  CONTINUE_SESSION("Go on with this session"),
  START_AGAIN("Start a new series"),
  CHOOSE_FOLDER("Keep it in another folder…"),
  BACK_TO_RIG("Back to the rig");

  private final String words;

  WayOn(String words) {
    this.words = words;
  }

  boolean startsASeries() {
    return switch (this) {
      case CONTINUE_SESSION, START_AGAIN, CHOOSE_FOLDER -> true;
      case OPEN_FINDINGS, BACK_TO_RIG -> false;
    };
  }

  /** The words on its button. */
  String words() {
    return words;
  }

  /** The id of its button. */
  String id() {
    return "way-" + name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /**
   * The ways on after {@code end}, the likeliest first.
   *
   * @param hadSession whether it was to go on with a session, even where that was not opened
   */
  static List<WayOn> after(SeriesEnd end, boolean hadSession) {
    List<WayOn> ways =
        new ArrayList<>(
            switch (end.kind()) {
              case COMPLETE -> List.of(OPEN_FINDINGS, CONTINUE_SESSION, START_AGAIN);
              case STOPPED, INCOMPLETE -> List.of(CONTINUE_SESSION, OPEN_FINDINGS, START_AGAIN);
              case NOTHING_MEASURED, INSTRUMENT_FAILED ->
                  List.of(CONTINUE_SESSION, START_AGAIN, BACK_TO_RIG);
              case WRONG_USE -> List.of(BACK_TO_RIG, START_AGAIN);
              case SESSION_FAILED -> List.of(CHOOSE_FOLDER, CONTINUE_SESSION, BACK_TO_RIG);
            });
    if (end.session() == null) {
      ways.remove(OPEN_FINDINGS);
      if (!hadSession) {
        ways.remove(CONTINUE_SESSION);
      }
    }
    return ways;
  }
}
