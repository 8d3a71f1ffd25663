package mainsgap.session;

import mainsgap.signal.Scale;

/**
 * Tells a waveform that was clipped from one that was not, where a file names no rails. Cautious:
 * it wants a plateau at the extreme value in two places or more, each with corners too sharp for
 * the rounded top of a quantised sine and flanks too slow for a square wave. A clean trapezoid is
 * taken for a clipped sine.
 */
final class Rails {
  private static final int PLACES = 2;
  private static final int SHORTEST_PLATEAU = 5;

  /** The corner is looked at down to so many steps of the converter below the plateau. */
  private static final int CORNER_STEPS = 4;

  /**
   * The longest corner as a part of the plateau. The top of a quantised sine, of half width
   * sqrt(d), d at most one step, falls four steps in sqrt(d + 4) - sqrt(d): at least 0.6 of it.
   */
  private static final double LONGEST_CORNER = 0.3;

  /** The flank is looked at down to this part of the span. */
  private static final double FLANK = 0.25;

  /** The shortest flank of a sine as a part of the plateau; a square wave falls faster. */
  private static final double SHORTEST_FLANK = 0.1;

  private final Numbers volts;
  private final double step;
  private final double span;

  private Rails(Numbers volts, double step, double span) {
    this.volts = volts;
    this.step = step;
    this.span = span;
  }

  /** Volts with the rails that the samples show, or with none. */
  static Scale scaleOf(Numbers volts) {
    double lowest = Double.POSITIVE_INFINITY;
    double highest = Double.NEGATIVE_INFINITY;
    double step = Double.POSITIVE_INFINITY;
    for (int i = 0; i < volts.size(); i++) {
      lowest = Math.min(lowest, volts.get(i));
      highest = Math.max(highest, volts.get(i));
      double change = i == 0 ? 0 : Math.abs(volts.get(i) - volts.get(i - 1));
      step = change > 0 ? Math.min(step, change) : step;
    }
    if (!(lowest < highest)) {
      return Scale.VOLTS;
    }
    Rails rails = new Rails(volts, step, highest - lowest);
    return new Scale(
        0,
        1,
        0,
        rails.isClippedAt(lowest) ? lowest : Double.NEGATIVE_INFINITY,
        rails.isClippedAt(highest) ? highest : Double.POSITIVE_INFINITY);
  }

  private boolean isClippedAt(double extreme) {
    int places = 0;
    int start = 0;
    while (start < volts.size()) {
      int end = start;
      while (end < volts.size() && volts.get(end) == extreme) {
        end++;
      }
      boolean isPlateau = end - start >= SHORTEST_PLATEAU;
      if (isPlateau
          && isCut(extreme, start - 1, -1, end - start)
          && isCut(extreme, end, 1, end - start)) {
        places++;
      }
      start = Math.max(end, start + 1);
    }
    return places >= PLACES;
  }

  /** Whether the waveform leaves a plateau as a clipped sine does, going one way from its end. */
  private boolean isCut(double extreme, int from, int way, int plateau) {
    int corner = samplesUntil(extreme, CORNER_STEPS * step, from, way);
    int flank = samplesUntil(extreme, FLANK * span, from, way);
    return corner <= LONGEST_CORNER * plateau && flank >= Math.max(2, SHORTEST_FLANK * plateau);
  }

  private int samplesUntil(double extreme, double distance, int from, int way) {
    int at = from;
    while (at >= 0 && at < volts.size() && Math.abs(volts.get(at) - extreme) < distance) {
      at += way;
    }
    return Math.abs(at - from);
  }
}
