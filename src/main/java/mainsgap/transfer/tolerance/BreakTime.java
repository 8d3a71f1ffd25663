package mainsgap.transfer.tolerance;

import mainsgap.transfer.outcome.Outcome;

/**
 * How long the load is without power, in bands as the last part of the IEC 62040-3 code draws them.
 * A band says nothing of the class: that takes the standard's own tests and its curves.
 */
public enum BreakTime {
  /** No interruption that the capture would have shown. */
  NONE("no break"),
  /** Up to 1 ms (the figure from memory). */
  WITHIN_1_MS("a break of up to 1 ms"),
  /** Over 1 ms, up to 10 ms. */
  WITHIN_10_MS("a break of up to 10 ms"),
  /** Over 10 ms. */
  OVER_10_MS("a break of over 10 ms"),
  /** The limit of a band lies within the uncertainty, or the record is too short. */
  UNDECIDED("a break whose band cannot be told");

  private final String words;

  BreakTime(String words) {
    this.words = words;
  }

  /** The band in words. */
  public String words() {
    return words;
  }

  /**
   * The band of an outcome's gap.
   *
   * @param gap the span of its possible durations
   */
  static BreakTime of(Outcome outcome, VoltageDeviation gap) {
    if (outcome.kind() == Outcome.Kind.NO_INTERRUPTION) {
      return NONE;
    }
    BreakTime least = band(gap.leastMillis());
    return least == band(gap.mostMillis()) ? least : UNDECIDED;
  }

  private static BreakTime band(double millis) {
    if (millis <= 1) {
      return WITHIN_1_MS;
    }
    return millis <= 10 ? WITHIN_10_MS : OVER_10_MS;
  }
}
