package mainsgap.cli;

import java.util.LinkedHashMap;
import java.util.Map;
import mainsgap.transfer.Measured;
import mainsgap.transfer.NoReturn;
import mainsgap.transfer.Outcome;
import mainsgap.transfer.UncertaintyBudget;
import org.jspecify.annotations.Nullable;

/** The uncertainty budget of one outcome among its figures; scripts depend on the names. */
final class BudgetJson {
  private BudgetJson() {}

  /** Its budget; null where the outcome has none, or none was kept. */
  static @Nullable UncertaintyBudget of(Outcome outcome) {
    return switch (outcome.kind()) {
      case MEASURED -> ((Measured) outcome).budget();
      case NO_RETURN -> ((NoReturn) outcome).budget();
      case NO_INTERRUPTION, REFUSED -> null;
    };
  }

  /** Adds the lines, and k, to {@code values}: null where there are none. */
  static void put(Outcome outcome, Map<String, @Nullable Object> values) {
    UncertaintyBudget budget = of(outcome);
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
