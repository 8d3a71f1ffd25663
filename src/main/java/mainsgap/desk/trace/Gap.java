package mainsgap.desk.trace;

/**
 * The gap, shaded and bracketed.
 *
 * @param fromSeconds from the zero of the picture: 0 where that is the loss
 * @param toSeconds the return, or the end of the record where the gap is open
 * @param open whether it goes on after {@code toSeconds}: no return was seen
 * @param label its time with its uncertainty, such as "8.42 ms ± 0.05 ms"
 */
public record Gap(double fromSeconds, double toSeconds, boolean open, String label) {

  /** Checks that it does not end before it starts. */
  public Gap {
    if (!(fromSeconds <= toSeconds)) {
      throw new IllegalArgumentException(
          "a gap ends after it starts, found " + fromSeconds + " s to " + toSeconds + " s");
    }
  }

  /** One with both its ends, from the zero of the picture on. */
  public static Gap of(double lengthSeconds, String label) {
    return new Gap(0, lengthSeconds, false, label);
  }
}
