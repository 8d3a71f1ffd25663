package mainsgap.scope;

import mainsgap.signal.Event;
import org.jspecify.annotations.Nullable;

/**
 * The forced long record: time for the switch to be moved, and the record around the event.
 *
 * @param windowSeconds the time in which the switch is moved
 * @param neededSeconds what the record holds around the event
 * @param reason why it is this long, in words
 */
record ForcedRecord(double windowSeconds, double neededSeconds, String reason) {
  private static final double HAND_SECONDS = 8;
  private static final double COMMANDED_SECONDS = 2;
  private static final double WISHED_INTERVAL_SECONDS = 1e-5;

  /** Below this rate a shorter window is the lesser evil. */
  private static final double GOOD_INTERVAL_SECONDS = 2e-5;

  static ForcedRecord of(CaptureRequest request, CaptureTimes times) {
    boolean back = request.event() == Event.RESTORATION;
    double window =
        (request.switchedByHand() ? HAND_SECONDS : COMMANDED_SECONDS)
            + (back ? CaptureTimes.TRANSFER_BACK_DELAY_SECONDS : 0);
    String reason =
        (request.switchedByHand()
                ? "time for the hand on the mains switch"
                : "time for the commanded mains switch")
            + (back ? " and for the unit, which checks the mains before it goes back" : "");
    return new ForcedRecord(window, times.beforeSeconds() + times.afterSeconds(), reason);
  }

  /** The longest record that the memory holds well, then a shorter one, then a coarser one. */
  @Nullable RecordSize size(ScopeLimits limits) {
    for (double coarsest : new double[] {GOOD_INTERVAL_SECONDS, RecordSize.COARSEST_SECONDS}) {
      for (double window : new double[] {windowSeconds, windowSeconds / 2}) {
        RecordSize size =
            RecordSize.fitting(
                RoundValues.up125(window + neededSeconds),
                WISHED_INTERVAL_SECONDS,
                coarsest,
                limits);
        if (size != null) {
          return size;
        }
      }
    }
    return null;
  }

  /** The shortest record that would do. */
  double leastSeconds() {
    return RoundValues.up125(windowSeconds / 2 + neededSeconds);
  }
}
