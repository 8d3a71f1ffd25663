package mainsgap.simulation;

import java.util.Arrays;
import java.util.stream.Collectors;

/** The backup units that the bench can simulate. All are invented; none is a real product. */
public enum SimulatedUnit {
  STANDBY("standby", "simulated standby unit with a relay and a sine output, 7 to 13 ms"),
  STANDBY_STEPPED("standby-stepped", "simulated standby unit with a soft-starting stepped output"),
  STANDBY_QUASI_SQUARE("standby-quasi-square", "simulated standby unit with a quasi-square output"),
  LINE_INTERACTIVE(
      "line-interactive", "simulated line-interactive unit with a sine output, 2 to 6 ms"),
  DOUBLE_CONVERSION("double-conversion", "simulated double-conversion unit: no interruption"),
  NEVER_RETURNS("never-returns", "simulated standby unit whose inverter never starts");

  private final String label;
  private final String description;

  SimulatedUnit(String label, String description) {
    this.label = label;
    this.description = description;
  }

  /** The name on the command line. */
  public String label() {
    return label;
  }

  /** One line for people. */
  public String description() {
    return description;
  }

  /** All names, in order, separated by commas. */
  public static String labels() {
    return Arrays.stream(values()).map(SimulatedUnit::label).collect(Collectors.joining(", "));
  }

  /**
   * The unit of that name.
   *
   * @throws IllegalArgumentException with the allowed names, where there is none
   */
  public static SimulatedUnit named(String label) {
    return Arrays.stream(values())
        .filter(unit -> unit.label.equals(label))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "there is no simulated unit '" + label + "': choose one of " + labels()));
  }
}
