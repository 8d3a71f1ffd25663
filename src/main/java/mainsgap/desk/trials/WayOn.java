package mainsgap.desk.trials;

import java.util.ArrayList;
import java.util.List;
import mainsgap.bench.SeriesEnd;

/** What can be done once a series has ended. */
enum WayOn {
  OPEN_FINDINGS,
  CONTINUE_SESSION,
  START_AGAIN,
  CHOOSE_FOLDER,
  BACK_TO_RIG;

  /** The ways on after {@code end}, the likeliest first. */
  static List<WayOn> after(SeriesEnd end) {
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
      ways.removeAll(List.of(OPEN_FINDINGS, CONTINUE_SESSION));
    }
    return ways;
  }
}
