package mainsgap.simulation;

/** The simulated bench could not be set up; the message is a sentence for people. */
public final class SimulationException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /** Creates the exception with its sentence and its cause. */
  public SimulationException(String message, Throwable cause) {
    super(message, cause);
  }
}
