package mainsgap.transfer;

/** Ends the measurement of a capture that carries none; becomes {@link Refused}. */
class CannotMeasureException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  CannotMeasureException(String reason) {
    super(reason);
  }
}
