package mainsgap.simulation;

/** What hangs on the output of the simulated unit. */
public enum SimulatedLoad {
  /** The output falls to zero at once when its supply goes. */
  RESISTIVE,
  /** The output keeps a residue that decays over milliseconds. */
  CAPACITIVE
}
