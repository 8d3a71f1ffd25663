package mainsgap.cli;

import java.util.Locale;
import mainsgap.cli.TextTable.Side;
import mainsgap.transfer.UncertaintyBudget;

/** The uncertainty of one transfer time, line by line, after the GUM. */
final class BudgetText {
  private BudgetText() {}

  /** The text, in microseconds. */
  static String of(UncertaintyBudget budget) {
    TextTable table = new TextTable(Side.LEFT, Side.RIGHT, Side.LEFT);
    table.add("component", "standard uncertainty", "in a series");
    budget
        .components()
        .forEach(
            component ->
                table.add(
                    component.name(),
                    micros(component.standardMillis()),
                    component.common() ? "the same in all trials" : "anew in each trial"));
    table.add("combined", micros(budget.combinedMillis()), "root of the sum of squares");
    table.add(
        "expanded, 95 %",
        micros(budget.expandedMillis()),
        String.format(Locale.ROOT, "k = %.4g", budget.coverageFactor()));
    return table.toString();
  }

  private static String micros(double millis) {
    return String.format(Locale.ROOT, "%.3g µs", 1e3 * millis);
  }
}
