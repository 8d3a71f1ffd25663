package mainsgap.transfer.outcome;

/** Ends the measurement of a capture that carries none; becomes {@link Refused}. */
public class CannotMeasureException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  public CannotMeasureException(String reason) {
    super(reason);
  }
}
