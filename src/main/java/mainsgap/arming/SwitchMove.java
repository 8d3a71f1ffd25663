package mainsgap.arming;

import mainsgap.transfer.Event;

/** A move of the mains switch. */
public enum SwitchMove {
  /** Mains goes off. */
  OPEN,
  /** Mains comes back. */
  CLOSE;

  /** The move that causes {@code event}. */
  public static SwitchMove causing(Event event) {
    return switch (event) {
      case LOSS -> OPEN;
      case RESTORATION -> CLOSE;
    };
  }

  /** The move that undoes this one. */
  public SwitchMove back() {
    return this == OPEN ? CLOSE : OPEN;
  }
}
