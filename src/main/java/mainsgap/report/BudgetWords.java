package mainsgap.report;

import java.util.List;
import java.util.Locale;
import mainsgap.transfer.outcome.BudgetSource;
import mainsgap.transfer.outcome.UncertaintyBudget;

/**
 * The uncertainty of one transfer time as words, line by line, after the GUM; times in
 * microseconds.
 *
 * @param lines in the order of the budget
 * @param combined the combined standard uncertainty
 * @param expanded the half-width of the 95 % interval
 * @param coverage the factor between them
 */
public record BudgetWords(List<Line> lines, String combined, String expanded, String coverage) {
  /** What is below counts for nothing beside any sample interval, but is not nothing. */
  private static final double LEAST_MICROS = 0.01;

  /** From here on three figures would be printed as a power. */
  private static final double PLAIN_FROM_MICROS = 999.5;

  private static final double LEAST_PERCENT = 0.05;

  private static final String NOT_KNOWN = "not known";

  /**
   * One contribution.
   *
   * @param name what it comes from
   * @param type of its evaluation, A or B
   * @param distribution that is assumed, with its divisor
   * @param sensitivity how the transfer time moves with it
   * @param standard its standard uncertainty, a time already
   * @param contribution to the combined standard uncertainty: sensitivity times standard, without
   *     sign
   * @param share of the combined variance
   * @param inSeries whether other trials of a series share it
   */
  public record Line(
      String name,
      String type,
      String distribution,
      String sensitivity,
      String standard,
      String contribution,
      String share,
      String inSeries) {}

  /** Takes its own copy. */
  public BudgetWords {
    lines = List.copyOf(lines);
  }

  /** The words for {@code budget}. */
  public static BudgetWords of(UncertaintyBudget budget) {
    return new BudgetWords(
        budget.components().stream().map(line -> line(line, budget)).toList(),
        micros(budget.combinedMillis()),
        micros(budget.expandedMillis()),
        Double.isFinite(budget.coverageFactor())
            ? String.format(Locale.ROOT, "k = %.4g", budget.coverageFactor())
            : "k " + NOT_KNOWN);
  }

  private static Line line(UncertaintyBudget.Component component, UncertaintyBudget budget) {
    String micros = micros(component.standardMillis());
    return new Line(
        component.name(),
        BudgetSource.of(component).map(source -> source.evaluation().name()).orElse(NOT_KNOWN),
        BudgetSource.of(component).map(BudgetSource::distribution).orElse(NOT_KNOWN),
        BudgetSource.of(component).isEmpty()
            ? NOT_KNOWN
            : component.name().startsWith("loss: ") ? "−1" : "1",
        micros,
        micros,
        share(component.standardMillis(), budget.combinedMillis()),
        component.common() ? "may be alike in all trials" : "anew in each trial");
  }

  private static String share(double standardMillis, double combinedMillis) {
    double percent = 100 * standardMillis * standardMillis / (combinedMillis * combinedMillis);
    if (!Double.isFinite(percent)) {
      return NOT_KNOWN;
    }
    return percent > 0 && percent < LEAST_PERCENT
        ? "< 0.1 %"
        : String.format(Locale.ROOT, "%.1f %%", percent);
  }

  private static String micros(double millis) {
    double micros = 1e3 * millis;
    if (!Double.isFinite(micros)) {
      return NOT_KNOWN;
    }
    if (micros < LEAST_MICROS) {
      return "< 0.01 µs";
    }
    return String.format(Locale.ROOT, micros < PLAIN_FROM_MICROS ? "%.3g µs" : "%.0f µs", micros);
  }
}
