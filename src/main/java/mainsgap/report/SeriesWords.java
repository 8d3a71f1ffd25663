package mainsgap.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.transfer.claim.SeriesSummary;
import org.jspecify.annotations.Nullable;

/**
 * The figures of a series as words, rounded by their scatter; "-" where there is none.
 *
 * @param n the valid trials, and those that do not count
 * @param mean of the times with both ends
 * @param spread their standard deviation
 * @param largest with 'at least' where a record ended before the return
 * @param bound the upper bound
 * @param declared the claim with its kind
 * @param verdict of the series
 */
public record SeriesWords(
    String n,
    String mean,
    String spread,
    String largest,
    String bound,
    String declared,
    String verdict) {
  private static final String NONE = "-";

  /** A figure of a series is told to a microsecond at best. */
  private static final double FINEST_MILLIS = 0.01;

  /** The words for {@code series}. */
  public static SeriesWords of(UnitSeries series) {
    SeriesSummary summary = series.summary();
    double smallest = smallestUncertainty(series);
    double scatter = Objects.requireNonNullElse(summary.standardDeviationMillis(), smallest);
    boolean sawNoGap = Objects.equals(summary.maxMillis(), 0.0);
    return new SeriesWords(
        n(series),
        sawNoGap ? NONE : orDash(summary.meanMillis(), scatter),
        sawNoGap ? NONE : orDash(summary.standardDeviationMillis(), scatter),
        sawNoGap
            ? "no interruption"
            : (series.isLargestAtLeast() ? "at least " : "")
                + orDash(summary.maxMillis(), smallest),
        sawNoGap ? NONE : orDash(summary.upperToleranceBoundMillis(), scatter),
        declared(series.header().claim()),
        summary.verdict() == null ? NONE : summary.verdict().name());
  }

  /** The words on one line, without those that are not there, and shorter and shorter ones. */
  List<String> lines() {
    return List.of(line(true, true), line(true, false), line(false, false));
  }

  private String line(boolean withBound, boolean withMean) {
    List<String> parts = new ArrayList<>(List.of("n = " + n));
    if (withMean && !mean.equals(NONE)) {
      parts.add("mean " + mean);
    }
    if (withMean && !spread.equals(NONE)) {
      parts.add("s " + spread);
    }
    if (!largest.equals(NONE)) {
      parts.add((largest.startsWith("no ") ? "" : "largest ") + largest);
    }
    if (withBound && !bound.equals(NONE)) {
      parts.add("bound " + bound);
    }
    if (!verdict.equals(NONE)) {
      parts.add(verdict);
    }
    return String.join(" · ", parts);
  }

  private static String n(UnitSeries series) {
    List<String> others = new ArrayList<>();
    if (series.refused() > 0) {
      others.add(series.refused() + " refused");
    }
    if (series.setAside() > 0) {
      others.add(series.setAside() + " set aside");
    }
    return series.summary().n()
        + (others.isEmpty() ? "" : " (+ " + String.join(", ", others) + ")");
  }

  /** A claim as it is printed, and what it is said to be. */
  static String declared(@Nullable DeclaredClaim claim) {
    if (claim == null) {
      return NONE;
    }
    return claim.value() + " " + claim.kind().name().toLowerCase(Locale.ROOT);
  }

  private static double smallestUncertainty(UnitSeries series) {
    return series.standing().stream()
        .filter(point -> point.kind() != TrialPoint.Kind.NO_INTERRUPTION)
        .map(TrialPoint::uncertaintyMillis)
        .filter(Objects::nonNull)
        .mapToDouble(Double::doubleValue)
        .min()
        .orElse(0);
  }

  private static String orDash(@Nullable Double millis, double uncertaintyMillis) {
    return millis == null
        ? NONE
        : Readings.millis(millis, Math.max(FINEST_MILLIS, uncertaintyMillis));
  }
}
