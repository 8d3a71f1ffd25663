package mainsgap.cli;

import mainsgap.bench.CheckListener;
import mainsgap.bench.ProbedQuestion;
import mainsgap.bench.WalkedMessage;

/** Tells what a check does while it does it. */
final class CheckProgress implements CheckListener {
  private final Surroundings surroundings;
  private String step = "";

  CheckProgress(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public void begun(String sentence) {
    surroundings.progress("%s", sentence);
  }

  @Override
  public void asked(ProbedQuestion question) {
    surroundings.progress("  %s: %s", question.query(), question.answer());
  }

  @Override
  public void walked(WalkedMessage message) {
    if (!message.step().equals(step)) {
      step = message.step();
      surroundings.progress("  %s", step);
    }
  }
}
