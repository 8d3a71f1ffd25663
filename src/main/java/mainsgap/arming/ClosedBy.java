package mainsgap.arming;

/** Who closes a mains switch. */
public enum ClosedBy {
  /** A hand, on the switch itself. */
  HAND,
  /** The program, each time on the fresh word of a person. */
  PROGRAM_ON_A_WORD,
  /** The program by itself: an unattended rig whose owner said so. */
  PROGRAM;

  /** Whether the program commands the switch. */
  public boolean isCommanded() {
    return this != HAND;
  }
}
