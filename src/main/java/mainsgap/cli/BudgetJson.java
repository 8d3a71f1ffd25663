package mainsgap.cli;

import java.util.LinkedHashMap;
import java.util.Map;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.UncertaintyBudget;
import org.jspecify.annotations.Nullable;

/** The uncertainty budget of one outcome among its figures; scripts depend on the names. */
final class BudgetJson {
  private BudgetJson() {}

  /** Adds the lines, and k, to {@code values}: null where there are none. */
  static void put(Outcome outcome, Map<String, @Nullable Object> values) {
    UncertaintyBudget budget = outcome.budget();
    values.put(
        "uncertaintyBudget",
        budget == null ? null : budget.components().stream().map(BudgetJson::line).toList());
    values.put("coverageFactor", budget == null ? null : finite(budget.coverageFactor()));
  }

  private static Map<String, @Nullable Object> line(UncertaintyBudget.Component component) {
    Map<String, @Nullable Object> line = new LinkedHashMap<>();
    line.put("source", component.name());
    line.put("standardUncertaintyMs", finite(component.standardMillis()));
    line.put("common", component.common());
    return line;
  }

  private static @Nullable Double finite(double number) {
    return Double.isFinite(number) ? (Double) number : null;
  }
}
