package mainsgap.transfer.outcome;

import java.util.List;
import java.util.function.Predicate;

/**
 * The uncertainty of one transfer time, after the GUM (JCGM 100).
 *
 * @param components each with its standard uncertainty
 * @param coverageFactor k, so that expanded = k times the combined standard uncertainty
 */
public record UncertaintyBudget(List<Component> components, double coverageFactor) {
  /** Where an output that rests does not show when it came; rectangular. */
  public static final String IN_REST = "within a rest of the output";

  /**
   * One line of the budget.
   *
   * @param name what it comes from
   * @param standardMillis its standard uncertainty in milliseconds, at least 0
   * @param common whether it is the same in all trials of a series, so that their scatter does not
   *     show it; false for what each trial draws anew, such as noise and the sampling grid
   */
  public record Component(String name, double standardMillis, boolean common) {

    /** A component of which it is not known that trials draw it anew: taken as common. */
    public Component(String name, double standardMillis) {
      this(name, standardMillis, true);
    }
  }

  /** Takes its own copy of the components. */
  public UncertaintyBudget {
    components = List.copyOf(components);
  }

  /** The combined standard uncertainty in milliseconds: the root of the sum of squares. */
  public double combinedMillis() {
    return rootOfSquares(component -> true);
  }

  /** Half-width of the 95 % interval in milliseconds. */
  public double expandedMillis() {
    return coverageFactor * combinedMillis();
  }

  /** The common components' part of the half-width: what the scatter of a series does not show. */
  public double commonExpandedMillis() {
    return coverageFactor * rootOfSquares(Component::common);
  }

  /** Whether an output with rests of its own came, or was lost, in one of them, unseen. */
  public boolean isInRest(String instant) {
    return components.stream()
        .anyMatch(component -> component.name().equals(instant + ": " + IN_REST));
  }

  private double rootOfSquares(Predicate<Component> counted) {
    return Math.sqrt(
        components.stream()
            .filter(counted)
            .mapToDouble(component -> component.standardMillis() * component.standardMillis())
            .sum());
  }
}
