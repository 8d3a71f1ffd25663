package mainsgap.arming;

/** What the live signal says of the mains downstream of the switch. */
public enum MainsState {
  /** Near its nominal voltage. */
  PRESENT,
  /** There, but too low: it comes or goes. */
  POOR,
  /** Not there. */
  ABSENT,
  /** No channel watches it, and the output may be fed by the backup. */
  UNKNOWN
}
