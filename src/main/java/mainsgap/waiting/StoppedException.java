package mainsgap.waiting;

/** The work ended because its {@link StopRequest} was made: an expected end, not a fault. */
public final class StoppedException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /** Creates the exception. */
  public StoppedException() {
    super("stopped by the user");
  }
}
