package mainsgap.bench;

/** How the event is to get into the record. */
public enum CatchWish {
  /** The time-out trigger where the instrument has one, else the forced record. */
  AUTOMATIC,
  /** A single shot that triggers by itself on the loss. */
  TIME_OUT_TRIGGER,
  /** One record of seconds in which the event is found in software. */
  FORCED_RECORD
}
