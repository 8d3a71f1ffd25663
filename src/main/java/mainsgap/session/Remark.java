package mainsgap.session;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * An entry that is not a trial: cautions read, a move of a commanded mains switch, an attempt
 * without a trigger, a stop, a fault, the end of a series, or what a person adds.
 *
 * @param at when it was made
 * @param kind what it is
 * @param trial the trial that it is about; null where it is about none
 * @param text one sentence
 */
public record Remark(Instant at, Kind kind, @Nullable Integer trial, String text) {

  /** A remark about no trial. */
  public Remark(Instant at, Kind kind, String text) {
    this(at, kind, null, text);
  }

  /** What a remark records. */
  public enum Kind {
    /** The cautions were read and confirmed. */
    CAUTIONS_READ,
    /** A series of trials begins. */
    SERIES_STARTED,
    /** A commanded mains switch was told to move, and how that went. */
    MAINS_SWITCH,
    /** An attempt ended without a capture. */
    NO_CAPTURE,
    /** The series was stopped by the user. */
    STOPPED,
    /** The series ended by a fault. */
    FAULTED,
    /** The series ran to its end. */
    COMPLETE,
    /** A person's note, about a trial or about the session. */
    NOTE,
    /** A person saw the load of a trial go on as if nothing had happened. */
    LOAD_RODE_THROUGH,
    /** A person saw the load of a trial stop or start anew. */
    LOAD_RESET,
    /** A person saw that the load of a trial was damaged. */
    LOAD_DAMAGED
  }
}
