package mainsgap.bench;

import java.util.Map;

/** Serves the simulated bench to other programs on this machine, in autonomous mode. */
public final class SimulationServer implements AutoCloseable {
  private SimulationServer() {}

  /**
   * Starts serving on free ports of the loopback address.
   *
   * @param unit one of {@link SimulatedUnits#names()}
   * @param seed fixes everything that is left to chance
   * @throws BenchException with a sentence when the unit is unknown or no port can be opened
   */
  public static SimulationServer start(String unit, long seed) {
    throw new BenchException("to come: " + unit + seed);
  }

  /** The resource names by the instrument profile that each speaks. */
  public Map<String, String> resourceNames() {
    return Map.of();
  }

  @Override
  public void close() {}
}
