package mainsgap.bench;

import java.util.List;
import mainsgap.scope.ProbeStep;

/**
 * A question of a probe.
 *
 * @param query what was sent
 * @param wanted the form of answer by which the profile knows its family
 * @param answer what came, in words: the answer, or how the instrument met the question
 * @param answered whether an answer came
 * @param fits whether it is of the form
 * @param errors what the error queue then held
 * @param queueAnswered whether the error queue could be asked
 */
public record ProbedQuestion(
    String query,
    String wanted,
    String answer,
    boolean answered,
    boolean fits,
    List<String> errors,
    boolean queueAnswered) {

  /** Takes its own copy. */
  public ProbedQuestion {
    errors = List.copyOf(errors);
  }

  static ProbedQuestion of(ProbeStep step) {
    return new ProbedQuestion(
        step.query(),
        step.wanted(),
        words(step),
        step.answer() == ProbeStep.Answer.ANSWERED,
        step.fits(),
        step.errors(),
        step.queueAnswered());
  }

  private static String words(ProbeStep step) {
    return switch (step.answer()) {
      case ANSWERED -> Words.printable(step.text());
      case SILENT -> "silence for 1 s, then device clear";
      case UNUSABLE -> Words.printable(step.text());
      case BROKE_OFF -> "it broke off the connection, which was opened again";
    };
  }
}
