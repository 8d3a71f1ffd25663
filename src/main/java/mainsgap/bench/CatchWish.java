package mainsgap.bench;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import mainsgap.scope.CatchMethod;
import org.jspecify.annotations.Nullable;

/** How the event is to get into the record. */
public enum CatchWish {
  /** The surest way that the instrument and the rig allow. */
  AUTOMATIC("automatic", null),
  /** Fires once no crossing of a level has come for a time. */
  TIME_OUT_TRIGGER("time-out", CatchMethod.TIME_OUT_TRIGGER),
  /** Fires once no rise through a level has come for a time. */
  DROPOUT_TRIGGER("dropout", CatchMethod.DROPOUT_TRIGGER),
  /** Fires once the signal has stayed below a level for a time. */
  PULSE_WIDTH_TRIGGER("pulse-width", CatchMethod.PULSE_WIDTH_TRIGGER),
  /** Fires once the time between two rises is too long. */
  INTERVAL_TRIGGER("interval", CatchMethod.INTERVAL_TRIGGER),
  /** Fires once the signal has stayed near zero for a time. */
  WINDOW_TRIGGER("window", CatchMethod.WINDOW_TRIGGER),
  /** Fires on an edge of the marker channel, or of mains that comes back. */
  EDGE_TRIGGER("edge", CatchMethod.EDGE_TRIGGER),
  /** Fires on an edge at the external trigger input. */
  EXTERNAL_TRIGGER("external", CatchMethod.EXTERNAL_TRIGGER),
  /** One record of seconds in which the event is found in software. */
  FORCED_RECORD("record", CatchMethod.FORCED_RECORD),
  /** Short records, one after the other. */
  BACK_TO_BACK_RECORDS("back-to-back", CatchMethod.BACK_TO_BACK_RECORDS);

  private final String word;
  private final @Nullable CatchMethod method;

  CatchWish(String word, @Nullable CatchMethod method) {
    this.word = word;
    this.method = method;
  }

  /** The wish of this word, where there is one. */
  public static Optional<CatchWish> ofWord(String word) {
    return Arrays.stream(values()).filter(wish -> wish.word.equals(word)).findFirst();
  }

  /** All words, in their order. */
  public static List<String> allWords() {
    return Arrays.stream(values()).map(CatchWish::word).toList();
  }

  /** As it is written on the command line and in a rig file. */
  public String word() {
    return word;
  }

  /** The method; null leaves the choice to the planner. */
  @Nullable CatchMethod method() {
    return method;
  }
}
