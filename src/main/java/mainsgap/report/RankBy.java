package mainsgap.report;

import java.util.Objects;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** By what units are ranked, the best first. */
public enum RankBy {
  /** The largest transfer time. */
  LARGEST("largest transfer time", "shortest first") {
    @Override
    @Nullable Double of(UnitSeries series) {
      return withoutReturnLast(series, series.summary().maxMillis());
    }
  },
  /** The mean transfer time. */
  MEAN("mean transfer time", "shortest first") {
    @Override
    @Nullable Double of(UnitSeries series) {
      return withoutReturnLast(series, series.summary().meanMillis());
    }
  },
  /** The upper bound of the transfer time. */
  UPPER_BOUND("upper bound of the transfer time", "shortest first") {
    @Override
    @Nullable Double of(UnitSeries series) {
      return series.summary().upperToleranceBoundMillis();
    }
  },
  /** The largest residual disturbance. */
  RESIDUAL("largest residual disturbance", "cleanest first") {
    @Override
    @Nullable Double of(UnitSeries series) {
      OptionalDouble largest =
          series.standing().stream()
              .map(TrialPoint::residualPercent)
              .filter(Objects::nonNull)
              .mapToDouble(Double::doubleValue)
              .max();
      return withoutReturnLast(series, largest.isPresent() ? (Double) largest.getAsDouble() : null);
    }
  };

  private final String figure;
  private final String order;

  RankBy(String figure, String order) {
    this.figure = figure;
    this.order = order;
  }

  /** What is ranked and in which order, for people. */
  public String words() {
    return figure + ", " + order;
  }

  /** What is ranked, for people. */
  String figure() {
    return figure;
  }

  /**
   * A trial without a return counts as the longest and the least clean, however short its record.
   */
  private static @Nullable Double withoutReturnLast(UnitSeries series, @Nullable Double figure) {
    return series.summary().noReturns() > 0 ? (Double) Double.POSITIVE_INFINITY : figure;
  }

  /** The figure that is ranked; null where the series has none. */
  abstract @Nullable Double of(UnitSeries series);
}
