package mainsgap.arming;

import mainsgap.signal.Event;

/** A move of the mains switch. */
public enum SwitchMove {
  /** Mains goes off. */
  OPEN("open"),
  /** Mains comes back. */
  CLOSE("close");

  private final String verb;

  SwitchMove(String verb) {
    this.verb = verb;
  }

  /** What is done to the switch, in one word. */
  public String verb() {
    return verb;
  }

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
