package mainsgap.signal;

import java.util.function.IntToDoubleFunction;

/**
 * Tells a waveform that was clipped from one that was not, where a file names no rails. Cautious:
 * for rails that a measurement may be refused for it wants a plateau at the extreme value in two
 * places or more, each with corners too sharp for the rounded top of a quantised sine and flanks
 * too slow for a square wave. A clean trapezoid is taken for a clipped sine.
 */
public final class Rails {
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

  private final int length;
  private final IntToDoubleFunction volts;
  private final double lowest;
  private final double highest;
  private final double step;

  private Rails(int length, IntToDoubleFunction volts) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    double smallest = Double.POSITIVE_INFINITY;
    double before = Double.NaN;
    for (int i = 0; i < length; i++) {
      double here = volts.applyAsDouble(i);
      low = Math.min(low, here);
      high = Math.max(high, here);
      double change = Math.abs(here - before);
      smallest = change > 0 ? Math.min(smallest, change) : smallest;
      before = here;
    }
    this.length = length;
    this.volts = volts;
    this.lowest = low;
    this.highest = high;
    this.step = smallest;
  }

  /** Volts with the rails that so many samples show, or with none. */
  public static Scale scaleOf(int length, IntToDoubleFunction volts) {
    Rails rails = new Rails(length, volts);
    return new Scale(
        0,
        1,
        0,
        rails.isClippedAt(rails.lowest) ? rails.lowest : Double.NEGATIVE_INFINITY,
        rails.isClippedAt(rails.highest) ? rails.highest : Double.POSITIVE_INFINITY);
  }

  /**
   * Whether a single peak from sample {@code from} (inclusive) to {@code to} (exclusive) is cut off
   * at an extreme of the record: a finding, too little for a refusal. On one side it may begin or
   * end with a step, as where a voltage comes back beyond the rail.
   */
  public static boolean isPeakCutIn(double[] volts, int from, int to) {
    Rails rails = new Rails(volts.length, i -> volts[i]);
    return rails.cutPlaces(rails.lowest, from, to, 1) > 0
        || rails.cutPlaces(rails.highest, from, to, 1) > 0;
  }

  private boolean isClippedAt(double extreme) {
    return cutPlaces(extreme, 0, length, 2) >= PLACES;
  }

  /** The plateaus between two samples that are cut, with so many slow flanks of the two. */
  private int cutPlaces(double extreme, int from, int to, int slowFlanks) {
    int places = 0;
    int start = Math.max(0, from);
    while (lowest < highest && start < Math.min(to, length)) {
      int end = start;
      while (end < length && volts.applyAsDouble(end) == extreme) {
        end++;
      }
      int plateau = end - start;
      if (plateau >= SHORTEST_PLATEAU
          && isSharp(extreme, start - 1, -1, plateau)
          && isSharp(extreme, end, 1, plateau)) {
        int slow =
            (isSlow(extreme, start - 1, -1, plateau) ? 1 : 0)
                + (isSlow(extreme, end, 1, plateau) ? 1 : 0);
        places += slow >= slowFlanks ? 1 : 0;
      }
      start = Math.max(end, start + 1);
    }
    return places;
  }

  private boolean isSharp(double extreme, int from, int way, int plateau) {
    return samplesUntil(extreme, CORNER_STEPS * step, from, way) <= LONGEST_CORNER * plateau;
  }

  private boolean isSlow(double extreme, int from, int way, int plateau) {
    int flank = samplesUntil(extreme, FLANK * (highest - lowest), from, way);
    return flank >= Math.max(2, SHORTEST_FLANK * plateau);
  }

  private int samplesUntil(double extreme, double distance, int from, int way) {
    int at = from;
    while (at >= 0 && at < length && Math.abs(volts.applyAsDouble(at) - extreme) < distance) {
      at += way;
    }
    return Math.abs(at - from);
  }
}
