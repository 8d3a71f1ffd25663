package mainsgap.transfer.tolerance;

/** How well a published value is known here. */
public enum Evidence {
  /** Found in the source that is named beside it. */
  CONFIRMED,
  /** Worked out from confirmed values. */
  CALCULATED,
  /** Not confirmed: whatever rests on it is indicative. */
  FROM_MEMORY
}
