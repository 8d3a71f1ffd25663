package mainsgap.session;

/** A capture file could not be read; the message names the file, the line and the reason. */
public final class CaptureFileException extends SessionException {
  private static final long serialVersionUID = 1L;

  /** Creates the exception with its sentence. */
  public CaptureFileException(String message) {
    super(message);
  }

  /** Creates the exception with its sentence and its cause. */
  public CaptureFileException(String message, Throwable cause) {
    super(message, cause);
  }
}
