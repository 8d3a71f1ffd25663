package mainsgap.cli;

import mainsgap.cli.TextTable.Side;
import mainsgap.report.BudgetWords;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.UncertaintyBudget;

/** The uncertainty of one transfer time, line by line, after the GUM. */
final class BudgetText {
  private BudgetText() {}

  /** The budget of {@code outcome} under its name; empty where it has none. */
  static String of(String name, Outcome outcome) {
    UncertaintyBudget budget = outcome.budget();
    return budget == null ? "" : "\nuncertainty, " + name + "\n" + of(budget);
  }

  /** The text, in microseconds. */
  static String of(UncertaintyBudget budget) {
    BudgetWords words = BudgetWords.of(budget);
    TextTable table = new TextTable(Side.LEFT, Side.RIGHT, Side.LEFT);
    table.add("component", "standard uncertainty", "in a series");
    words.lines().forEach(line -> table.add(line.name(), line.standard(), line.inSeries()));
    table.add("combined", words.combined(), "root of the sum of squares");
    table.add("expanded, 95 %", words.expanded(), words.coverage());
    return table.toString();
  }
}
