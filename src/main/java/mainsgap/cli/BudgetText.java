package mainsgap.cli;

import java.util.Locale;
import mainsgap.cli.TextTable.Side;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.UncertaintyBudget;

/** The uncertainty of one transfer time, line by line, after the GUM. */
final class BudgetText {
  /** What is below counts for nothing beside any sample interval, but is not nothing. */
  private static final double LEAST_MICROS = 0.01;

  /** From here on three figures would be printed as a power. */
  private static final double PLAIN_FROM_MICROS = 999.5;

  private BudgetText() {}

  /** The budget of {@code outcome} under its name; empty where it has none. */
  static String of(String name, Outcome outcome) {
    UncertaintyBudget budget = outcome.budget();
    return budget == null ? "" : "\nuncertainty, " + name + "\n" + of(budget);
  }

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
                    component.common() ? "may be alike in all trials" : "anew in each trial"));
    table.add("combined", micros(budget.combinedMillis()), "root of the sum of squares");
    table.add(
        "expanded, 95 %",
        micros(budget.expandedMillis()),
        String.format(Locale.ROOT, "k = %.4g", budget.coverageFactor()));
    return table.toString();
  }

  private static String micros(double millis) {
    double micros = 1e3 * millis;
    if (micros < LEAST_MICROS) {
      return "< 0.01 µs";
    }
    return String.format(Locale.ROOT, micros < PLAIN_FROM_MICROS ? "%.3g µs" : "%.0f µs", micros);
  }
}
