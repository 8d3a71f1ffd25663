package mainsgap.scope;

/** The oscilloscope did not do what it was asked; the message is a sentence for people. */
public final class ScopeException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /** Creates the exception with its sentence. */
  public ScopeException(String message) {
    super(message);
  }

  /** Creates the exception with its sentence and its cause. */
  public ScopeException(String message, Throwable cause) {
    super(message, cause);
  }
}
