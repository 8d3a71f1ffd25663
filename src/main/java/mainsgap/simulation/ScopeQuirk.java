package mainsgap.simulation;

/** Ways of simulated scopes that are odd but in order, so that a client can be tried on them. */
public enum ScopeQuirk {
  /** Says for a moment after its start that it is stopped. */
  LATE_FIRST_STATE,
  /** Sends a text before each data block. */
  TEXT_BEFORE_BLOCK,
  /** Sends no new line behind a data block. */
  NO_NEW_LINE_BEHIND_BLOCK,
  /** Sends a byte too many behind a data block. */
  EXTRA_BYTE_BEHIND_BLOCK,
  /** Sends half of the first data block, and all of it when it is asked again. */
  SHORT_FIRST_BLOCK,
  /** Writes its errors with a sign and in single quotes: {@code +0,'No error'}. */
  SIGNED_QUOTED_ERRORS,
  /** Has no value for a sample in the middle of each part. */
  HOLE_IN_RECORD
}
