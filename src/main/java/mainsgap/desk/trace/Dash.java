package mainsgap.desk.trace;

import java.util.List;
import java.util.stream.DoubleStream;

/** How a line is broken, so that it can be told without its colour. */
enum Dash {
  /** Not at all. */
  UNBROKEN(1),
  /** Long strokes. */
  DASHED(10, 6),
  /** Short ones. */
  DOTTED(3, 4.5),
  /** Both in turn. */
  DASHED_AND_DOTTED(11, 5, 3, 5);

  @SuppressWarnings("ImmutableEnumChecker") // made unmodifiable below
  private final List<Double> strokes;

  private final double period;

  /** The lengths of strokes and gaps in turn, in pixels of a usual screen. */
  Dash(double... strokes) {
    this.strokes = DoubleStream.of(strokes).boxed().toList();
    this.period = DoubleStream.of(strokes).sum();
  }

  /** The pattern of the curve with this number, counted from 0. */
  static Dash ofCurve(int number) {
    return values()[1 + number % (values().length - 1)];
  }

  /** Whether the line is drawn at this length along it, in pixels of a usual screen. */
  boolean isDrawnAt(double length) {
    double left = length - Math.floor(length / period) * period;
    for (int i = 0; i < strokes.size(); i++) {
      left -= strokes.get(i);
      if (left < 0) {
        return i % 2 == 0;
      }
    }
    return true;
  }
}
