package mainsgap.simulation;

/** What the commanded mains switches of the simulated bench do wrong. */
public enum SwitchFault {
  /** Nothing. */
  NONE,
  /** They move nothing and answer nothing. */
  SILENT,
  /** They refuse each command with an error. */
  ANSWERS_WITH_ERROR,
  /** They take each command and move nothing, as a welded contact does; asked, they tell it. */
  STUCK
}
