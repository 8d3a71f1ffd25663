package mainsgap.link;

/** The deadline passed first. The link may still be used after {@link Link#clear}. */
public final class LinkTimeoutException extends LinkException {
  private static final long serialVersionUID = 1L;

  /** Creates the exception with its sentence. */
  public LinkTimeoutException(String message) {
    super(message);
  }
}
