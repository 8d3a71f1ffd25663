package mainsgap.bench;

import java.nio.file.Path;
import java.util.List;
import mainsgap.transfer.outcome.MeasuringTask;
import org.jspecify.annotations.Nullable;

/**
 * How a series ended.
 *
 * @param kind which way
 * @param sentence what happened and what to do, for people
 * @param unit the specimen's name; empty where the series never began
 * @param task what was measured; null where the series never began
 * @param trials all trials of this run in their order, refused ones too
 * @param figures of the whole session: trials that stood in it before this run count
 * @param session the session file; null where none was opened
 * @param lastSeal the session's last seal; null where none was opened or it cannot be read
 */
public record SeriesEnd(
    Kind kind,
    String sentence,
    String unit,
    @Nullable MeasuringTask task,
    List<TrialReport> trials,
    RunningFigures figures,
    @Nullable Path session,
    @Nullable String lastSeal) {

  /** The ways in which a series ends. */
  public enum Kind {
    /** All wanted trials are measured. */
    COMPLETE,
    /** Some trials are measured, and the rest could not be. */
    INCOMPLETE,
    /** Nothing could be measured: the rig is not right, or no trigger came. */
    NOTHING_MEASURED,
    /** The user asked for something that cannot be; nothing was armed. */
    WRONG_USE,
    /** The instrument or its link failed. */
    INSTRUMENT_FAILED,
    /** The session could not be opened, written or read. */
    SESSION_FAILED,
    /** Stopped by the user. */
    STOPPED
  }

  static SeriesEnd beforeTheFirstTrial(Kind kind, String unit, RuntimeException why) {
    return new SeriesEnd(
        kind,
        String.valueOf(why.getMessage()),
        unit,
        null,
        List.of(),
        RunningFigures.NONE,
        null,
        null);
  }

  /** Takes its own copy of the trials. */
  public SeriesEnd {
    trials = List.copyOf(trials);
  }
}
