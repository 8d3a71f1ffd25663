package mainsgap.arming;

/** A commanded mains switch did not do what it was told: mains may be on. */
public final class MainsSwitchException extends RigException {
  private static final long serialVersionUID = 1L;

  /** Creates the exception with its sentence. */
  public MainsSwitchException(String message) {
    super(message);
  }

  /** Creates the exception with its sentence and its cause. */
  public MainsSwitchException(String message, Throwable cause) {
    super(message, cause);
  }
}
