package mainsgap.session;

/** The session file could not be made, written or read; the message is a sentence for people. */
public class SessionException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /** Creates the exception with its sentence. */
  public SessionException(String message) {
    super(message);
  }

  /** Creates the exception with its sentence and its cause. */
  public SessionException(String message, Throwable cause) {
    super(message, cause);
  }
}
