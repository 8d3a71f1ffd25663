package mainsgap.transfer.outcome;

/** Ends the measurement of a capture in which nothing is seen to happen. */
public final class NoEventException extends CannotMeasureException {
  private static final long serialVersionUID = 1L;

  public NoEventException(String reason) {
    super("no event: " + reason);
  }
}
