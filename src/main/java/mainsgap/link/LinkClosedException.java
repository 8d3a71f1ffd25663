package mainsgap.link;

/** The connection is gone: closed by the instrument, the network or this program. */
public final class LinkClosedException extends LinkException {
  private static final long serialVersionUID = 1L;

  /** Creates the exception with its sentence. */
  public LinkClosedException(String message) {
    super(message);
  }

  /** Creates the exception with its sentence and its cause. */
  public LinkClosedException(String message, Throwable cause) {
    super(message, cause);
  }
}
