package mainsgap.bench;

import java.util.Arrays;
import java.util.List;
import mainsgap.simulation.SimulatedUnit;

/** The units of the simulated bench, invented for it. */
public final class SimulatedUnits {
  /** The unit where none is named. */
  public static final String DEFAULT = "standby";

  private SimulatedUnits() {}

  /** Their names, the default first. */
  public static List<String> names() {
    return Arrays.stream(SimulatedUnit.values()).map(SimulatedUnit::label).toList();
  }
}
