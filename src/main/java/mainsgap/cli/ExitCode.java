package mainsgap.cli;

/** What the program's exit code says; scripts depend on the numbers. */
enum ExitCode {
  /** All measured, and passed where a rated time is given. */
  DONE(0),
  /** Measured, but some trial failed, was inconclusive or refused, or figures differ. */
  NOT_ALL_PASSED(1),
  /** The command line is wrong. */
  WRONG_USE(2),
  /** Nothing could be measured or found. */
  NOTHING_MEASURED(3),
  /** The instrument or the link failed. */
  INSTRUMENT_FAILED(4),
  /** The session failed, or a seal is broken. */
  SESSION_FAILED(5),
  /** Stopped by the user; what was logged stays. */
  STOPPED(130);

  private final int number;

  ExitCode(int number) {
    this.number = number;
  }

  /** The number that the process ends with. */
  int number() {
    return number;
  }
}
