package mainsgap.transfer;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import mainsgap.statistics.Sample;
import mainsgap.statistics.ToleranceFactor;
import org.jspecify.annotations.Nullable;

/**
 * The outcomes of a series as numbers: refused ones left out, no interruption as 0 ms, no return as
 * a reading of which only the least is known.
 *
 * @param readings the transfer times in ms that have both ends
 * @param leastOfNoReturns what each record without return shows at least, in ms
 * @param noInterruptions how many of the readings are trials without interruption
 * @param withFurtherInterruptions how many trials had breaks after the return of which no length is
 *     known
 * @param commonMillis the largest common part of U
 */
record SeriesFigures(
    List<Double> readings,
    List<Double> leastOfNoReturns,
    int noInterruptions,
    int withFurtherInterruptions,
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
        (int)
            measured.stream()
                .filter(trial -> trial.furtherInterruptions().isLengthUnknown())
                .count(),
        measured.stream()
            .mapToDouble(trial -> trial.budget().commonExpandedMillis())
            .max()
            .orElse(0));
  }

  int n() {
    return readings.size() + noReturns();
  }

  int noReturns() {
    return leastOfNoReturns.size();
  }

  /** The figures of the readings with both ends; null where there are none. */
  @Nullable Sample sample() {
    return readings.isEmpty()
        ? null
        : Sample.of(readings.stream().mapToDouble(Double::doubleValue).toArray());
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

  /** A censored reading has no place in a mean and a standard deviation: then there is no bound. */
  @Nullable Double upperBoundMillis() {
    Sample sample = sample();
    return sample == null || noReturns() > 0 || n() < FEWEST_FOR_BOUND
        ? null
        : (Double) ToleranceFactor.upperBound(sample, COVERAGE, CONFIDENCE);
  }

  private static <T extends Outcome> List<T> only(List<Outcome> outcomes, Class<T> type) {
    return outcomes.stream().filter(type::isInstance).map(type::cast).toList();
  }
}
