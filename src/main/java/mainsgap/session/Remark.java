package mainsgap.session;

import java.time.Instant;

/**
 * An entry that is not a trial: cautions read, a move of a commanded mains switch, an attempt
 * without a trigger, a stop, a fault, the end of a series.
 *
 * @param at when it was made
 * @param kind what it is
 * @param text one sentence
 */
public record Remark(Instant at, Kind kind, String text) {

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
    COMPLETE
  }
}
