package mainsgap.arming;

import mainsgap.session.Remark;

/**
 * How the loop ended.
 *
 * @param state the last state
 * @param reason why it was entered
 * @param measured how many trials were measured
 * @param sentence what happened and what to do, for people
 */
public record LoopEnd(LoopState state, Reason reason, int measured, String sentence) {

  /** Why a loop ends. */
  public enum Reason {
    /** All wanted trials are measured. */
    DONE(LoopState.COMPLETE),
    /** More attempts failed than may be repeated. */
    REPEATS_SPENT(LoopState.COMPLETE),
    /** The user asked for it. */
    STOPPED(LoopState.STOPPED),
    /** The live signal is not what it must be. */
    RIG_NOT_RIGHT(LoopState.FAULTED),
    /** A commanded mains switch failed: mains may be on. */
    MAINS_SWITCH(LoopState.FAULTED),
    /** The instrument or its link failed. */
    INSTRUMENT(LoopState.FAULTED),
    /** The session log failed. */
    SESSION(LoopState.FAULTED);

    private final LoopState state;

    Reason(LoopState state) {
      this.state = state;
    }

    /** The kind of the log's last entry. */
    Remark.Kind remark() {
      return switch (this) {
        case DONE, REPEATS_SPENT -> Remark.Kind.COMPLETE;
        case STOPPED -> Remark.Kind.STOPPED;
        case RIG_NOT_RIGHT, MAINS_SWITCH, INSTRUMENT, SESSION -> Remark.Kind.FAULTED;
      };
    }
  }

  LoopEnd(Reason reason, int measured, String sentence) {
    this(reason.state, reason, measured, sentence);
  }
}
