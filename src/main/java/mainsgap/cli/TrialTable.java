package mainsgap.cli;

import mainsgap.cli.TextTable.Side;
import mainsgap.transfer.Judgement;
import mainsgap.transfer.Outcome;
import mainsgap.transfer.Refused;
import org.jspecify.annotations.Nullable;

/** Trials, or captures from files, a line each. */
final class TrialTable {
  private final TextTable table =
      new TextTable(Side.RIGHT, Side.RIGHT, Side.LEFT, Side.RIGHT, Side.RIGHT, Side.LEFT);

  /** An empty table whose first column is headed {@code what}. */
  TrialTable(String what) {
    table.add(what, "transfer time", "±U (95 %)", "dead time", "loss at", "verdict");
  }

  /** Adds a line. */
  void add(String name, Outcome outcome, @Nullable Judgement judgement) {
    OutcomeWords words = OutcomeWords.of(outcome);
    table.add(
        name,
        words.transfer(),
        words.uncertainty(),
        words.dead(),
        words.angle(),
        verdict(outcome, judgement));
  }

  /** The verdict with its reason where that says more than the numbers. */
  static String verdict(Outcome outcome, @Nullable Judgement judgement) {
    if (outcome instanceof Refused refused) {
      return refused.reason();
    }
    if (judgement == null) {
      return "not judged";
    }
    return switch (judgement.verdict()) {
      case PASS -> "PASS";
      case FAIL, INCONCLUSIVE -> judgement.verdict() + ": " + judgement.reason();
    };
  }

  @Override
  public String toString() {
    return table.toString();
  }
}
