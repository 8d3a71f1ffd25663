package mainsgap.scope;

import java.util.List;

/**
 * One question of a probe and what came of it.
 *
 * @param query what was sent; it changes nothing
 * @param wanted the form of the answer by which the family is known, a regular expression; empty
 *     where any will do
 * @param answer how the instrument met the question
 * @param text the answer, or what was wrong with it; empty where none came
 * @param errors what the error queue then held, oldest first
 * @param queueAnswered whether the error queue could be asked
 * @param fits whether the answer is of the form
 */
public record ProbeStep(
    String query,
    String wanted,
    Answer answer,
    String text,
    List<String> errors,
    boolean queueAnswered,
    boolean fits) {

  /** How an instrument meets a question. */
  public enum Answer {
    /** A line came. */
    ANSWERED,
    /** Nothing came within the time-out; the link was cleared. */
    SILENT,
    /** What came is no line of an answer; the link was cleared. */
    UNUSABLE,
    /** The instrument broke off the connection, which was opened again. */
    BROKE_OFF
  }

  /** Takes its own copy. */
  public ProbeStep {
    errors = List.copyOf(errors);
  }
}
