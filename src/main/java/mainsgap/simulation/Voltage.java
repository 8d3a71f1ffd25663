package mainsgap.simulation;

/** A voltage as a pure function of time. */
interface Voltage {

  /** No voltage at all. */
  Voltage NONE = seconds -> 0;

  /** The voltage at {@code seconds} on the event's own axis. */
  double voltsAt(double seconds);
}
