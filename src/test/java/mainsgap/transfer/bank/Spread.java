package mainsgap.transfer.bank;

import java.util.List;
import java.util.function.ToDoubleFunction;

/** Magnitudes in ascending order. The array is owned. */
@SuppressWarnings("ArrayRecordComponent") // owned, never handed out to change
record Spread(double[] ascending) {

  /** The magnitudes of what {@code value} gives; values that are no numbers are left out. */
  static <T> Spread of(List<T> items, ToDoubleFunction<T> value) {
    return new Spread(
        items.stream()
            .mapToDouble(value)
            .filter(Double::isFinite)
            .map(Math::abs)
            .sorted()
            .toArray());
  }

  /** The value that {@code share} of them do not pass; NaN where there is none. */
  double at(double share) {
    return ascending.length == 0
        ? Double.NaN
        : ascending[(int) Math.min(ascending.length - 1, Math.floor(share * ascending.length))];
  }

  double median() {
    return at(0.5);
  }

  double p95() {
    return at(0.95);
  }

  double most() {
    return at(1);
  }
}
