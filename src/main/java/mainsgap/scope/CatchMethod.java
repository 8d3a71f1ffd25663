package mainsgap.scope;

/** How the event gets into a record. */
public enum CatchMethod {
  /** A single shot that triggers by itself once no crossing of a level has come for a time. */
  TIME_OUT_TRIGGER,
  /** One record of seconds, started at once; the event is found in software. No blind zone. */
  FORCED_RECORD
}
