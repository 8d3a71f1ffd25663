package mainsgap.bench;

/** The bench could not be put together; the message is a sentence for people. */
public final class BenchException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /** Creates the exception with its sentence. */
  public BenchException(String message) {
    super(message);
  }

  /** Creates the exception with its sentence and its cause. */
  public BenchException(String message, Throwable cause) {
    super(message, cause);
  }
}
