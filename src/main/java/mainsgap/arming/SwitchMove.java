package mainsgap.arming;

import mainsgap.signal.Event;

/** A move of the mains switch. */
public enum SwitchMove {
  /** Mains goes off. */
  OPEN("open the mains switch now"),
  /** Mains comes back. */
  CLOSE("close the mains switch again");

  private final String request;

  SwitchMove(String request) {
    this.request = request;
  }

  /** The words by which a person is asked for it. */
  public String request() {
    return request;
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
