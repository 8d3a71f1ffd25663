package mainsgap.signal;

/**
 * The lowest and the highest voltage of some samples.
 *
 * @param lowestVolts positive infinity where there is none
 * @param highestVolts negative infinity where there is none
 */
public record VoltExtent(double lowestVolts, double highestVolts) {

  /** That of no sample at all. */
  public static final VoltExtent NONE =
      new VoltExtent(Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY);

  /** Whether there was no sample to tell of. */
  public boolean isNone() {
    return lowestVolts > highestVolts;
  }

  /** The extent of both together. */
  public VoltExtent and(VoltExtent other) {
    return new VoltExtent(
        Math.min(lowestVolts, other.lowestVolts), Math.max(highestVolts, other.highestVolts));
  }
}
