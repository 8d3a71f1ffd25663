package mainsgap.bench;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How a check ended.
 *
 * @param kind which way
 * @param sentence what happened and what to do; empty where all went well
 * @param findings of the probe; null where none was asked for, or it failed
 * @param messages of the try as far as it came
 * @param seen what the tried capture shows; empty where there is none
 * @param recordComplaint why the conversation file is not whole; empty where it is, or none was
 *     asked for
 */
public record CheckEnd(
    Kind kind,
    String sentence,
    @Nullable ProbeFindings findings,
    List<WalkedMessage> messages,
    List<SeenChannel> seen,
    String recordComplaint) {

  /** The ways in which a check ends. */
  public enum Kind {
    /** It is through. */
    COMPLETE,
    /** No profile fits, and none was to be tried. */
    NO_PROFILE,
    /** The user asked for something that cannot be; nothing was sent. */
    WRONG_USE,
    /** The instrument or its link failed. */
    INSTRUMENT_FAILED,
    /** Stopped by the user. */
    STOPPED
  }

  /** Takes its own copies. */
  public CheckEnd {
    messages = List.copyOf(messages);
    seen = List.copyOf(seen);
  }
}
