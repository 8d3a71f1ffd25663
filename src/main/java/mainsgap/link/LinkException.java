package mainsgap.link;

/** A link could not carry what it was given; the message is a sentence for people. */
public class LinkException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /** Creates the exception with its sentence. */
  public LinkException(String message) {
    super(message);
  }

  /** Creates the exception with its sentence and its cause. */
  public LinkException(String message, Throwable cause) {
    super(message, cause);
  }
}
