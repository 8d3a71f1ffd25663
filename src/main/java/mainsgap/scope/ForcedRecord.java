package mainsgap.scope;

import org.jspecify.annotations.Nullable;

/**
 * The forced long record: time for the switch to be moved, and the record around the event.
 *
 * @param windowSeconds the time in which the switch is moved
 * @param neededSeconds what the record holds around the event, and while the unit checks the mains
 * @param reason why it is this long, in words
 */
record ForcedRecord(double windowSeconds, double neededSeconds, String reason) {
  /** Below this rate a shorter window is the lesser evil. */
  static final double GOOD_INTERVAL_SECONDS = 2e-5;

  private static final double HAND_SECONDS = 8;
  private static final double COMMANDED_SECONDS = 2;
  private static final double WISHED_INTERVAL_SECONDS = 1e-5;

  static ForcedRecord of(CaptureRequest request, CaptureTimes times) {
    double check = times.unitWaitSeconds();
    double window = request.switchedByHand() ? HAND_SECONDS : COMMANDED_SECONDS;
    String reason =
        (request.switchedByHand()
                ? "time for the hand on the mains switch"
                : "time for the commanded mains switch")
            + (check > 0
                ? " and for the unit, which checks the mains for up to "
                    + Words.of(check, "s")
                    + " before it goes back"
                : "");
    return new ForcedRecord(window, check + times.beforeSeconds() + times.afterSeconds(), reason);
  }

  /** The longest record that the memory holds well, then a shorter one, then a coarser one. */
  @Nullable RecordSize size(ScopeLimits limits) {
    RecordSize good = size(limits, GOOD_INTERVAL_SECONDS);
    return good == null ? size(limits, RecordSize.COARSEST_SECONDS) : good;
  }

  /** The same, no coarser than asked for. */
  @Nullable RecordSize size(ScopeLimits limits, double coarsestSeconds) {
    for (double window : new double[] {windowSeconds, windowSeconds / 2}) {
      RecordSize size =
          RecordSize.fitting(
              RoundValues.up125(window + neededSeconds),
              WISHED_INTERVAL_SECONDS,
              coarsestSeconds,
              limits);
      if (size != null) {
        return size;
      }
    }
    return null;
  }

  /** The shortest record that would do. */
  double leastSeconds() {
    return RoundValues.up125(windowSeconds / 2 + neededSeconds);
  }
}
