package mainsgap.arming;

/** Where a mains switch stands. */
public enum SwitchPosition {
  /** Mains is off. */
  OPEN,
  /** Mains is on. */
  CLOSED,
  /** It does not tell. */
  UNKNOWN;

  /** Where a switch stands after {@code move}. */
  static SwitchPosition after(SwitchMove move) {
    return move == SwitchMove.OPEN ? OPEN : CLOSED;
  }
}
