package mainsgap.transfer.claim;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import mainsgap.statistics.Sample;
import mainsgap.statistics.ToleranceFactor;
import mainsgap.transfer.outcome.FurtherInterruptions;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.NoInterruption;
import mainsgap.transfer.outcome.NoReturn;
import mainsgap.transfer.outcome.OtherChannels;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.UncertaintyBudget;
import org.jspecify.annotations.Nullable;

/**
 * The outcomes of a series as numbers: refused ones left out, no interruption as 0 ms, no return as
 * a reading of which only the least is known.
 *
 * @param readings the transfer times in ms that have both ends
 * @param leastOfNoReturns what each record without return shows at least, in ms
 * @param noInterruptions how many of the readings are trials without interruption
 * @param longest of each of these trials the longest interruption that its loads see: on either
 *     leg, the transfer itself or a later break
 * @param open how many trials hide an interruption whose length is not known: on a second leg that
 *     was not measured or did not return, or after the return
 * @param commonMillis the largest common part of U
 */
record SeriesFigures(
    List<Double> readings,
    List<Double> leastOfNoReturns,
    int noInterruptions,
    List<Double> longest,
    int open,
    double commonMillis) {

  /** Fewer readings give no tolerance bound worth the name. */
  static final int FEWEST_FOR_BOUND = 3;

  private static final double COVERAGE = 0.95;
  private static final double CONFIDENCE = 0.95;

  static SeriesFigures of(List<Outcome> outcomes) {
    List<Measured> measured = only(outcomes, Measured.class);
    int noInterruptions = only(outcomes, NoInterruption.class).size();
    return new SeriesFigures(
        Stream.concat(
                measured.stream().map(Measured::transferMillis),
                Stream.generate(() -> 0.0).limit(noInterruptions))
            .toList(),
        only(outcomes, NoReturn.class).stream().map(NoReturn::atLeastMillis).toList(),
        noInterruptions,
        outcomes.stream().filter(SeriesFigures::hasBothEnds).map(SeriesFigures::longest).toList(),
        (int) outcomes.stream().filter(SeriesFigures::isOpen).count(),
        outcomes.stream().mapToDouble(SeriesFigures::commonMillis).max().orElse(0));
  }

  private static boolean hasBothEnds(Outcome outcome) {
    return outcome.kind() == Outcome.Kind.MEASURED
        || outcome.kind() == Outcome.Kind.NO_INTERRUPTION;
  }

  private static double longest(Outcome outcome) {
    double longest = 0;
    if (outcome instanceof Measured measured) {
      longest = longest(measured.transferMillis(), measured.furtherInterruptions());
    }
    OtherChannels.SecondLeg leg = outcome.others().secondLeg();
    return leg == null
        ? longest
        : Math.max(longest, longest(leg.transferMillis(), leg.furtherInterruptions()));
  }

  private static double longest(@Nullable Double transferMillis, FurtherInterruptions further) {
    Double later = further.longestMillis();
    return Math.max(transferMillis == null ? 0 : transferMillis, later == null ? 0 : later);
  }

  private static boolean isOpen(Outcome outcome) {
    OtherChannels.SecondLeg leg = outcome.others().secondLeg();
    boolean isLegOpen =
        leg != null && (leg.transferMillis() == null || leg.furtherInterruptions().isLeftOpen());
    return isLegOpen
        || (outcome instanceof Measured measured && measured.furtherInterruptions().isLeftOpen());
  }

  private static double commonMillis(Outcome outcome) {
    UncertaintyBudget budget = outcome instanceof Measured measured ? measured.budget() : null;
    OtherChannels.SecondLeg leg = outcome.others().secondLeg();
    return Math.max(
        budget == null ? 0 : budget.commonExpandedMillis(), leg == null ? 0 : leg.commonMillis());
  }

  int n() {
    return readings.size() + noReturns();
  }

  int noReturns() {
    return leastOfNoReturns.size();
  }

  /** The figures of the readings with both ends; null where there are none. */
  @Nullable Sample sample() {
    return readings.isEmpty() ? null : sample(readings);
  }

  private static Sample sample(List<Double> times) {
    return Sample.of(times.stream().mapToDouble(Double::doubleValue).toArray());
  }

  /** The largest reading, or what a record without return shows where that is more. */
  @Nullable Double maxMillis() {
    return Stream.concat(readings.stream(), leastOfNoReturns.stream())
        .max(Comparator.naturalOrder())
        .orElse(null);
  }

  /** The median with each trial without return as the largest; null where it falls on one. */
  @Nullable Double medianMillis() {
    int n = n();
    if (n / 2 >= readings.size()) {
      return null;
    }
    List<Double> sorted = readings.stream().sorted().toList();
    return (sorted.get((n - 1) / 2) + sorted.get(n / 2)) / 2;
  }

  /** Of the transfer times. */
  @Nullable Double upperBoundMillis() {
    return upperBoundMillis(readings);
  }

  /** Of the longest interruptions, which the claim is held against. */
  @Nullable Double upperBoundOfLongestMillis() {
    return upperBoundMillis(longest);
  }

  /** A censored reading has no place in a mean and a standard deviation: then there is no bound. */
  private @Nullable Double upperBoundMillis(List<Double> times) {
    return times.isEmpty() || noReturns() > 0 || n() < FEWEST_FOR_BOUND
        ? null
        : (Double) ToleranceFactor.upperBound(sample(times), COVERAGE, CONFIDENCE);
  }

  private static <T extends Outcome> List<T> only(List<Outcome> outcomes, Class<T> type) {
    return outcomes.stream().filter(type::isInstance).map(type::cast).toList();
  }
}
