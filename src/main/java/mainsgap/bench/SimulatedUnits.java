package mainsgap.bench;

import java.util.List;

/** The units of the simulated bench, invented for it. */
public final class SimulatedUnits {
  /** The unit where none is named. */
  public static final String DEFAULT = "standby";

  private SimulatedUnits() {}

  /** Their names, the default first. */
  public static List<String> names() {
    return List.of(
        "standby",
        "standby-stepped",
        "standby-quasi-square",
        "line-interactive",
        "double-conversion",
        "never-returns");
  }
}
