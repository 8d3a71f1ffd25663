package mainsgap.simulation;

/** A command that the simulated instrument refuses; its number and text go to the error queue. */
final class ScpiFault extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final ScpiError error;

  ScpiFault(ScpiError error) {
    super(error.text(), null, false, false);
    this.error = error;
  }

  ScpiError error() {
    return error;
  }
}
