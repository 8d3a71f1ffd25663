package mainsgap.transfer.bank;

import java.util.List;
import java.util.function.Predicate;
import java.util.stream.LongStream;
import mainsgap.transfer.outcome.Outcome;

/**
 * What many captures of one kind show.
 *
 * @param tried all of them, in the order of their seeds
 */
public record KindFigures(CaptureKind kind, List<TriedCapture> tried) {

  /** Measures captures 1 to {@code count} of {@code kind}, on all processors. */
  public static KindFigures of(CaptureKind kind, int count) {
    return new KindFigures(
        kind,
        LongStream.rangeClosed(1, count)
            .parallel()
            .mapToObj(seed -> TriedCapture.of(kind, seed))
            .toList());
  }

  /** Those whose outcome is the one that they carry. */
  List<TriedCapture> right() {
    return tried.stream().filter(one -> one.outcome().kind() == kind.carries()).toList();
  }

  /** How many have another outcome than they carry. */
  public int wrong() {
    return tried.size() - right().size();
  }

  /** How many have more or fewer further interruptions than they carry. */
  public int wrongBreaks() {
    return (int) tried.stream().filter(one -> !one.hasRightBreaks()).count();
  }

  /** Whether captures of this kind carry a transfer time. */
  public boolean hasTransferTime() {
    return kind.carries() == Outcome.Kind.MEASURED;
  }

  /** Whether there are instants whose error and interval can be told. */
  public boolean hasInstants() {
    return hasTransferTime() || kind.carries() == Outcome.Kind.NO_RETURN;
  }

  Spread errorsMicros() {
    return Spread.of(right(), TriedCapture::errorMicros);
  }

  Spread uncertaintiesMicros() {
    return Spread.of(right(), TriedCapture::uncertaintyMicros);
  }

  /** The share of all captures whose error lies within two samples or twice the bound. */
  public double withinBoundShare() {
    return hasTransferTime() ? share(tried, TriedCapture::isWithinBound) : Double.NaN;
  }

  /** The share of the right ones whose interval holds the truth; NaN where there is none. */
  public double coveredShare() {
    return hasInstants() ? share(right(), TriedCapture::isCovered) : Double.NaN;
  }

  /** Median U in units of the median error. */
  public double padding() {
    return uncertaintiesMicros().median() / errorsMicros().median();
  }

  /**
   * The median of each capture's own U in units of its own error. Intervals that are exact give 2.9
   * (1.96 by 0.674, the quantiles of a normal distribution at 97.5 % and 75 %) in any mix of
   * captures, where {@link #padding} gives more if some are told well and others badly.
   */
  public double ownPadding() {
    return Spread.of(right(), one -> one.uncertaintyMicros() / one.errorMicros()).median();
  }

  private static double share(List<TriedCapture> of, Predicate<TriedCapture> condition) {
    return (double) of.stream().filter(condition).count() / of.size();
  }

  double meanMillis() {
    return tried.stream().mapToDouble(TriedCapture::tookMillis).average().orElse(Double.NaN);
  }
}
