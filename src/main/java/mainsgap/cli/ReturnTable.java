package mainsgap.cli;

import mainsgap.cli.TextTable.Side;
import mainsgap.report.ReturnWords;
import mainsgap.transfer.outcome.Outcome;

/** How clean each return is, a line each: a word, and beside it the figures that it comes from. */
final class ReturnTable {
  private final TextTable table;
  private boolean isEmpty = true;

  /** An empty table whose first column is headed {@code what} and stands at {@code side}. */
  ReturnTable(String what, Side side) {
    this.table =
        new TextTable(
            side,
            Side.LEFT,
            Side.RIGHT,
            Side.RIGHT,
            Side.RIGHT,
            Side.RIGHT,
            Side.RIGHT,
            Side.RIGHT,
            Side.LEFT);
    table.add(
        what,
        "return",
        "overshoot",
        "undershoot",
        "phase",
        "THD",
        "settles",
        "residual",
        "because of");
  }

  /** Adds a line where there was a return whose cleanness was taken. */
  void add(String name, Outcome outcome) {
    ReturnWords.of(outcome).ifPresent(words -> add(name, words));
  }

  private void add(String name, ReturnWords words) {
    isEmpty = false;
    table.add(
        name,
        words.word(),
        words.overshoot(),
        words.undershoot(),
        words.phase(),
        words.distortion(),
        words.settles(),
        words.residual(),
        words.reasons());
  }

  /** The table; empty where no return was added. */
  @Override
  public String toString() {
    return isEmpty
        ? ""
        : "\nhow clean the return is (src/docs/method.md has the rule of the word)\n" + table;
  }
}
