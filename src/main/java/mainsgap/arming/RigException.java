package mainsgap.arming;

/** The rig is not right; the message says what to look at. */
public class RigException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  RigException(String message) {
    super(message);
  }

  RigException(String message, Throwable cause) {
    super(message, cause);
  }
}
