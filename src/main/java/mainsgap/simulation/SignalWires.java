package mainsgap.simulation;

/**
 * The small isolated signals of the bench, {@link #HIGH_VOLTS} while all is well and 0 V else.
 *
 * @param mainsPresent behind a rectifier and a filter: some way behind the mains switch
 * @param unitOnMains a contact of the unit, which moves with its relay
 */
record SignalWires(Voltage mainsPresent, Voltage unitOnMains) {
  static final double HIGH_VOLTS = 5;

  /** The filter rides over the zero crossings of the mains, and is as slow to notice its end. */
  static final double LATE_ON_LOSS_SECONDS = 30e-3;

  static final double LATE_ON_RETURN_SECONDS = 12e-3;
  static final double CONTACT_LATE_SECONDS = 2e-3;

  /** All well, since ever. */
  static SignalWires atRest() {
    return new SignalWires(at -> HIGH_VOLTS, at -> HIGH_VOLTS);
  }

  /** Mains goes at {@code openedSeconds}, and the unit leaves it at {@code leftSeconds}. */
  static SignalWires opening(double openedSeconds, double leftSeconds) {
    return new SignalWires(
        falling(openedSeconds + LATE_ON_LOSS_SECONDS), falling(leftSeconds + CONTACT_LATE_SECONDS));
  }

  /** Mains is back at {@code closedSeconds}, and the unit on it at {@code tookSeconds}. */
  static SignalWires closing(double closedSeconds, double tookSeconds) {
    return new SignalWires(
        rising(closedSeconds + LATE_ON_RETURN_SECONDS), rising(tookSeconds + CONTACT_LATE_SECONDS));
  }

  private static Voltage falling(double seconds) {
    return at -> at < seconds ? HIGH_VOLTS : 0;
  }

  private static Voltage rising(double seconds) {
    return at -> at < seconds ? 0 : HIGH_VOLTS;
  }
}
