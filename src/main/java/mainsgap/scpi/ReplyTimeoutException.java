package mainsgap.scpi;

/**
 * No whole reply came in time, and the error queue did not say why. The link has been cleared: a
 * caller may ask again, for less at a time.
 */
public final class ReplyTimeoutException extends ScpiException {
  private static final long serialVersionUID = 1L;

  /** Creates the exception with its sentence and its cause. */
  public ReplyTimeoutException(String message, Throwable cause) {
    super(message, cause);
  }
}
