package mainsgap.simulation;

import java.util.Arrays;
import java.util.stream.Collectors;

/** The instruments of the simulated bench: invented ones, each of a family with its own dialect. */
public enum SimulatedInstrument {
  /** Keeps to SCPI-1999; sends REAL,32 volts; has no time-out trigger. */
  DIGITIZER("scpi-1999-digitizer", "simulated-digitizer"),
  /** Describes its codes by a ten-field preamble; has a time-out trigger. */
  TEN_FIELD_SCOPE("ten-field-preamble", "simulated-scope"),
  /** Names the values of its preamble, headers before its answers; has a time-out trigger. */
  NAMED_VALUE_SCOPE("named-value-preamble", "simulated-curve-scope"),
  /** Sends volts, and tells by {@code *OPC} alone when it is done; has a time-out trigger. */
  VOLTS_SCOPE("values-in-volts", "simulated-volts-scope"),
  /** Has no preamble but single queries, and registers for its state; has no time-out trigger. */
  SINGLE_QUERY_SCOPE("single-scale-queries", "simulated-register-scope");

  private final String profile;
  private final String label;

  SimulatedInstrument(String profile, String label) {
    this.profile = profile;
    this.label = label;
  }

  /** The name of the instrument profile that it answers to. */
  public String profile() {
    return profile;
  }

  /** What threads and complaints call it. */
  String label() {
    return label;
  }

  /**
   * The instrument that answers to a profile.
   *
   * @throws IllegalArgumentException naming the profiles that there are
   */
  public static SimulatedInstrument answeringTo(String profile) {
    return Arrays.stream(values())
        .filter(instrument -> instrument.profile.equals(profile))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "no simulated instrument answers to the profile '"
                        + profile
                        + "': choose one of "
                        + Arrays.stream(values())
                            .map(SimulatedInstrument::profile)
                            .collect(Collectors.joining(", "))));
  }
}
