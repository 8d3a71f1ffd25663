package mainsgap.report;

/** A figure could not be made or written; the message is a sentence for people. */
public class ReportException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /** Creates the exception with its sentence. */
  public ReportException(String message) {
    super(message);
  }

  /** Creates the exception with its sentence and its cause. */
  public ReportException(String message, Throwable cause) {
    super(message, cause);
  }
}
