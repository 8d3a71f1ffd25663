package mainsgap.transfer;

import org.jspecify.annotations.Nullable;

/**
 * Breaks of a supply that had come back and fed the load for a cycle.
 *
 * @param count how many there are up to the end of the record
 * @param longestMillis the longest of them; null where it is not known
 * @param uncertaintyMillis half-width of an interval that holds the longest: its ends are told only
 *     where the supply stands away from zero, and to the averaging of the search
 */
public record FurtherInterruptions(
    int count, @Nullable Double longestMillis, double uncertaintyMillis) {

  /** The load stayed fed. */
  public static final FurtherInterruptions NONE = new FurtherInterruptions(0, null, 0);

  /** Breaks of which nothing but their number is known. */
  public static FurtherInterruptions ofUnknownLength(int count) {
    return new FurtherInterruptions(count, null, 0);
  }

  /** Whether there are some, and it is not known how long. */
  public boolean isLengthUnknown() {
    return count > 0 && longestMillis == null;
  }
}
