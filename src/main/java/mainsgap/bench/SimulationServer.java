package mainsgap.bench;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import mainsgap.simulation.SimulatedBench;
import mainsgap.simulation.SimulatedBenchSettings;
import mainsgap.simulation.SimulatedInstrument;
import mainsgap.simulation.SimulatedUnit;
import mainsgap.simulation.SimulationException;

/** Serves the simulated bench to other programs on this machine, in autonomous mode. */
public final class SimulationServer implements AutoCloseable {
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
    return start(unit, seed, Map.of());
  }

  /**
   * The same with raw sockets on ports of one's own choice.
   *
   * @param ports by the instrument profile that is answered there; 0 for any
   */
  public static SimulationServer start(String unit, long seed, Map<String, Integer> ports) {
    try {
      SimulatedBenchSettings settings =
          SimulatedBenchSettings.of(SimulatedUnit.named(unit), seed)
              .withAutonomousMains()
              .withPortmapper();
      for (Map.Entry<String, Integer> port : ports.entrySet()) {
        settings =
            settings.withPort(SimulatedInstrument.answeringTo(port.getKey()), port.getValue());
      }
      return new SimulationServer(SimulatedBench.start(settings));
    } catch (IllegalArgumentException | SimulationException e) {
      throw new BenchException(String.valueOf(e.getMessage()), e);
    }
  }

  /** The profiles that the instruments of the bench answer to. */
  public static List<String> profiles() {
    return Arrays.stream(SimulatedInstrument.values()).map(SimulatedInstrument::profile).toList();
  }

  /** What could not be served as it should be, in sentences; empty where all is well. */
  public List<String> remarks() {
    return simulation.hasPortmapper()
        ? List.of()
        : List.of(
            "127.0.0.1 port 111 is not free to this program, so that no portmapper leads to VXI-11:"
                + " the port is in the resource names, which other programs may not take");
  }

  /** All resource names that can be opened, each instrument's raw socket first. */
  public List<ServedInstrument> instruments() {
    return simulation.served().stream()
        .map(
            served ->
                new ServedInstrument(
                    served.instrument().profile(), served.link(), served.resource()))
        .toList();
  }

  /**
   * The resource names of what may command the mains, by the {@code kind} of a rig file; from the
   * first command on the bench moves its mains no more by itself.
   */
  public Map<String, String> mainsSwitches() {
    Map<String, String> switches = new LinkedHashMap<>();
    switches.put(RigSwitch.Kind.SCPI_OUTPUT.word(), simulation.sourceResource());
    switches.put(RigSwitch.Kind.SERIAL_RELAY.word(), simulation.relayResource());
    return switches;
  }

  /** The resource name of the raw socket of the instrument that answers to {@code profile}. */
  public String resource(String profile) {
    return simulation.resource(SimulatedInstrument.answeringTo(profile));
  }

  @Override
  public void close() {
    simulation.close();
  }
}
