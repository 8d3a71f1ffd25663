package mainsgap.transfer;

import java.util.List;

/**
 * The uncertainty of one transfer time, after the GUM (JCGM 100).
 *
 * @param components each with its standard uncertainty
 * @param coverageFactor k, so that expanded = k times the combined standard uncertainty
 */
public record UncertaintyBudget(List<Component> components, double coverageFactor) {

  /**
   * One line of the budget.
   *
   * @param name what it comes from
   * @param standardMillis its standard uncertainty in milliseconds, at least 0
   */
  public record Component(String name, double standardMillis) {}

  /** Takes its own copy of the components. */
  public UncertaintyBudget {
    components = List.copyOf(components);
  }

  /** The combined standard uncertainty in milliseconds: the root of the sum of squares. */
  public double combinedMillis() {
    double sumOfSquares = 0;
    for (Component component : components) {
      sumOfSquares += component.standardMillis() * component.standardMillis();
    }
    return Math.sqrt(sumOfSquares);
  }

  /** Half-width of the 95 % interval in milliseconds. */
  public double expandedMillis() {
    return coverageFactor * combinedMillis();
  }
}
