package mainsgap.transfer;

/** Ends the measurement of a capture in which nothing is seen to happen. */
final class NoEventException extends CannotMeasureException {
  private static final long serialVersionUID = 1L;

  NoEventException(String reason) {
    super("no event: " + reason);
  }
}
