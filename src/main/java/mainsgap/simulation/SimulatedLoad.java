package mainsgap.simulation;

/** What hangs on the output of the simulated unit. */
public enum SimulatedLoad {
  /** The output falls to near zero at once when its supply goes. */
  RESISTIVE(0.05e-3),
  /** The output keeps a residue that decays over milliseconds. */
  CAPACITIVE(6e-3);

  private final double decaySeconds;

  SimulatedLoad(double decaySeconds) {
    this.decaySeconds = decaySeconds;
  }

  /** The time constant of what is left on the output. */
  double decaySeconds() {
    return decaySeconds;
  }
}
