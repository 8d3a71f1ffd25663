package mainsgap.scpi;

/** The instrument did not answer as IEEE 488.2 and SCPI say; the message is a sentence. */
public class ScpiException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /** Creates the exception with its sentence. */
  public ScpiException(String message) {
    super(message);
  }

  /** Creates the exception with its sentence and its cause. */
  public ScpiException(String message, Throwable cause) {
    super(message, cause);
  }
}
