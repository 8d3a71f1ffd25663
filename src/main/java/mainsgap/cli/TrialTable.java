package mainsgap.cli;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import mainsgap.cli.TextTable.Side;
import mainsgap.report.OutcomeWords;
import mainsgap.transfer.outcome.Judgement;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Refused;
import mainsgap.transfer.outcome.Verdict;
import org.jspecify.annotations.Nullable;

/** Trials, or captures from files, a line each. */
final class TrialTable {
  private static final String DEFINITION =
      "The time is counted from the loss to the return, as the load sees it: near the 'total transfer"
          + " time' of IEC 62040-3, whose 'transfer time' starts later, at the initiation of the"
          + " transfer";

  private final StringBuilder reasons = new StringBuilder();
  private final Set<String> rules = new LinkedHashSet<>();
  private final String what;
  private final TextTable table;

  /** An empty table whose first column is headed {@code what} and stands at {@code side}. */
  TrialTable(String what, Side side) {
    this.what = what;
    this.table = new TextTable(side, Side.RIGHT, Side.LEFT, Side.RIGHT, Side.RIGHT, Side.LEFT);
    table.add(what, "transfer time", "±U (95 %)", "dead time", "angle", "verdict");
  }

  /**
   * Adds a line; what a word does not say stands below the table.
   *
   * @param beside what has to be told beside the time, whatever the verdict
   */
  void add(String name, Outcome outcome, @Nullable Judgement judgement, List<String> beside) {
    OutcomeWords words = OutcomeWords.of(outcome);
    table.add(
        name,
        words.transfer(),
        words.uncertainty(),
        words.dead(),
        words.angle(),
        judgement == null ? "-" : judgement.verdict().name());
    if (judgement != null) {
      rules.add(judgement.decisionRule());
    }
    String reason = reason(outcome, judgement);
    List<String> sentences = new ArrayList<>();
    if (!reason.isEmpty()) {
      sentences.add(reason);
    }
    beside.stream().filter(sentence -> !reason.contains(sentence)).forEach(sentences::add);
    if (!sentences.isEmpty()) {
      reasons
          .append(TextWrap.paragraph(what + " " + name + ": " + String.join("; ", sentences)))
          .append('\n');
    }
  }

  /** Why a capture is no plain PASS; empty where it is one, or where nothing is declared. */
  static String reason(Outcome outcome, @Nullable Judgement judgement) {
    if (outcome instanceof Refused refused) {
      return refused.reason();
    }
    return judgement == null || judgement.verdict() == Verdict.PASS ? "" : judgement.reason();
  }

  @Override
  public String toString() {
    return (reasons.isEmpty() ? table.toString() : table + "\n" + reasons)
        + (rules.isEmpty()
            ? ""
            : "\n"
                + TextWrap.paragraph("judged by " + String.join("; ", rules) + ". " + DEFINITION)
                + "\n");
  }
}
