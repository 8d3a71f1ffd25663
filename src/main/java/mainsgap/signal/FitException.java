package mainsgap.signal;

/** The samples do not determine the fit that was asked for; the message says why. */
public final class FitException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  FitException(String message) {
    super(message);
  }
}
