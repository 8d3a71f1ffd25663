package mainsgap.bench;

import java.util.LinkedHashMap;
import java.util.Map;
import mainsgap.simulation.SimulatedBench;
import mainsgap.simulation.SimulatedBenchSettings;
import mainsgap.simulation.SimulatedUnit;
import mainsgap.simulation.SimulationException;

/** Serves the simulated bench to other programs on this machine, in autonomous mode. */
public final class SimulationServer implements AutoCloseable {
  static final String STRICT = "scpi-1999-digitizer";
  static final String TEN_FIELD = "ten-field-preamble";

  private final SimulatedBench simulation;

  private SimulationServer(SimulatedBench simulation) {
    this.simulation = simulation;
  }

  /**
   * Starts serving on free ports of the loopback address.
   *
   * @param unit one of {@link SimulatedUnits#names()}
   * @param seed fixes everything that is left to chance
   * @throws BenchException with a sentence when the unit is unknown or no port can be opened
   */
  public static SimulationServer start(String unit, long seed) {
    return start(unit, seed, 0, 0);
  }

  /** The same on ports of one's own choice, in the order of {@link #resourceNames()}; 0: any. */
  public static SimulationServer start(String unit, long seed, int strictPort, int tenFieldPort) {
    try {
      return new SimulationServer(
          SimulatedBench.start(
              SimulatedBenchSettings.of(SimulatedUnit.named(unit), seed)
                  .withAutonomousMains()
                  .withPorts(strictPort, tenFieldPort)));
    } catch (IllegalArgumentException | SimulationException e) {
      throw new BenchException(String.valueOf(e.getMessage()), e);
    }
  }

  /** The resource names by the instrument profile that each speaks. */
  public Map<String, String> resourceNames() {
    Map<String, String> names = new LinkedHashMap<>();
    names.put(STRICT, simulation.strictResource());
    names.put(TEN_FIELD, simulation.tenFieldResource());
    return names;
  }

  @Override
  public void close() {
    simulation.close();
  }
}
