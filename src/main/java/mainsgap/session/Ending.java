package mainsgap.session;

/** How the last run of a session ended. */
public enum Ending {
  /** The series ran to its end. */
  COMPLETE("the series ran to its end"),
  /** The user stopped the series. */
  STOPPED("the series was stopped by the user"),
  /** The series ended by a fault. */
  FAULTED("the series ended by a fault"),
  /** No closing remark: the program crashed, or the run is still going on. */
  CRASHED("the last run has no closing entry: it crashed, or is still going on");

  private final String sentence;

  Ending(String sentence) {
    this.sentence = sentence;
  }

  /** The ending in words. */
  public String sentence() {
    return sentence;
  }

  /**
   * How the last run stands once {@code remark} follows; what a person adds is no part of a run.
   */
  Ending after(Remark remark) {
    return switch (remark.kind()) {
      case COMPLETE -> COMPLETE;
      case STOPPED -> STOPPED;
      case FAULTED -> FAULTED;
      case CAUTIONS_READ, SERIES_STARTED, MAINS_SWITCH, NO_CAPTURE -> CRASHED;
      case NOTE, LOAD_RODE_THROUGH, LOAD_RESET, LOAD_DAMAGED -> this;
    };
  }
}
