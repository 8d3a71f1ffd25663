package mainsgap.transfer.outcome;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import mainsgap.statistics.Sample;
import org.junit.jupiter.api.Test;

/** Published and calculated examples of the GUM (JCGM 100); the unit is that of the example. */
class UncertaintyBudgetTest {

  private static UncertaintyBudget.Component component(String name, double standard) {
    return new UncertaintyBudget.Component(name, standard, false);
  }

  /** Example H.1 to first order: 32 nm, and 93 nm at 99 % with k = 2.92. */
  @Test
  void endGaugeOfTheGumHasItsPublishedUncertainty() {
    UncertaintyBudget difference =
        new UncertaintyBudget(
            List.of(
                component("repeated observations", 5.8),
                component("random effects of the comparator", 3.9),
                component("systematic effects of the comparator", 6.7)),
            1);
    UncertaintyBudget gauge =
        new UncertaintyBudget(
            List.of(
                component("standard", 25),
                component("difference", difference.combinedMillis()),
                component("expansion", 2.9),
                component("temperature", 16.6)),
            2.921);

    assertEquals(9.7, difference.combinedMillis(), 0.05);
    assertEquals(32, gauge.combinedMillis(), 0.5);
    assertEquals(93, gauge.expandedMillis(), 0.8);
  }

  /** Ten readings with a type B uncertainty of 0.030 ms that all share. */
  @Test
  void meanOfACampaignHasItsScatterAndWhatAllReadingsShare() {
    Sample readings = Sample.of(new double[] {8.6, 9.4, 9.1, 8.9, 9.8, 9.2, 8.7, 9.5, 9.0, 9.3});
    UncertaintyBudget mean =
        new UncertaintyBudget(
            List.of(
                component("scatter", readings.standardDeviation() / Math.sqrt(readings.n())),
                new UncertaintyBudget.Component("common", 0.030, true)),
            2.228);

    assertEquals(9.15, readings.mean(), 1e-9);
    assertEquals(0.12046, mean.combinedMillis(), 1e-5);
    assertEquals(0.268, mean.expandedMillis(), 5e-4);
    assertEquals(2.228 * 0.030, mean.commonExpandedMillis(), 1e-12);
  }
}
