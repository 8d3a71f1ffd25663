package mainsgap.transfer.outcome;

import org.jspecify.annotations.Nullable;

/**
 * Breaks of a supply that had come back and fed the load for a cycle.
 *
 * @param count how many there are up to the end of the record
 * @param longestMillis the longest of them; null where it is not known
 * @param uncertaintyMillis half-width of an interval that holds the longest: its ends are told only
 *     where the supply stands away from zero, and to the averaging of the search
 * @param isOpen whether the record ends in the last of them: the longest is then at least as long
 *     as told, less its uncertainty
 */
public record FurtherInterruptions(
    int count, @Nullable Double longestMillis, double uncertaintyMillis, boolean isOpen) {

  /** The load stayed fed. */
  public static final FurtherInterruptions NONE = new FurtherInterruptions(0, null, 0);

  /** Breaks after each of which the load was fed again. */
  public FurtherInterruptions(int count, @Nullable Double longestMillis, double uncertaintyMillis) {
    this(count, longestMillis, uncertaintyMillis, false);
  }

  /** Breaks of which nothing but their number is known. */
  public static FurtherInterruptions ofUnknownLength(int count) {
    return new FurtherInterruptions(count, null, 0);
  }

  /** Whether there are some of which it is not known how long the longest is. */
  public boolean isLeftOpen() {
    return isOpen || (count > 0 && longestMillis == null);
  }
}
