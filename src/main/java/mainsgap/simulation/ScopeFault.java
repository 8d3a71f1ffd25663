package mainsgap.simulation;

/** What the simulated scope does wrong on request, so that a client can be tried on it. */
public enum ScopeFault {
  /** Nothing. */
  NONE,
  /** Time-out triggers and records of a second or more never leave the waiting state. */
  NEVER_TRIGGERS,
  /** Closes the connection in the middle of a data block. */
  CLOSES_IN_MID_BLOCK,
  /** Sends half of the bytes that the header of a data block announces, and then nothing. */
  STALLS_IN_MID_BLOCK,
  /** Sends a well-formed data block of half the points asked for. */
  SHORT_BLOCK,
  /** Sends each byte of a data block by itself. */
  SLOW,
  /** Answers a query for numbers with a word. */
  TEXT_FOR_NUMBER,
  /** Takes every message and never answers. */
  SILENT,
  /** Refuses to start an acquisition: error -221 in its queue. */
  ANSWERS_WITH_ERROR,
  /** Sets a quarter of the voltage range asked for, and says so when it is asked. */
  CLIPPING_RANGE
}
