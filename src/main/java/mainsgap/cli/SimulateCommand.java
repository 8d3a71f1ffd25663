package mainsgap.cli;

import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.Callable;
import mainsgap.bench.BenchException;
import mainsgap.bench.SimulatedUnits;
import mainsgap.bench.SimulationServer;
import mainsgap.waiting.Clock;
import mainsgap.waiting.StoppedException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The simulated bench, for other programs on this machine. */
@Command(
    name = "simulate",
    mixinStandardHelpOptions = true,
    versionProvider = TopCommand.Version.class,
    sortOptions = false,
    description =
        "Serves the simulated bench on this machine's loopback address until it is stopped. Its mains"
            + " opens by itself some time after each arming and closes again afterwards: it is for"
            + " losses; a restoration can be tried with 'run --simulated'.",
    footer = {
      "",
      "Example:",
      "  mainsgap simulate --unit line-interactive --seed 3",
      "",
      "It first prints the resource name of each simulated instrument and the profile that it",
      "speaks; give one of them to 'mainsgap run --instrument'. Ctrl-C stops it."
    })
final class SimulateCommand implements Callable<Integer> {
  private static final int INSTRUMENTS = 2;
  private static final int HIGHEST_PORT = 65_535;
  private static final Duration BETWEEN_LOOKS = Duration.ofSeconds(1);

  private final Surroundings surroundings;

  @Option(
      names = "--unit",
      paramLabel = "UNIT",
      converter = UnitWord.class,
      completionCandidates = UnitWord.class,
      description = "The invented unit (default: ${DEFAULT-VALUE}): ${COMPLETION-CANDIDATES}.")
  private String unit = SimulatedUnits.DEFAULT;

  @Option(
      names = "--seed",
      paramLabel = "N",
      description = "The same seed gives the same trials (default: ${DEFAULT-VALUE}).")
  private long seed = 1;

  @Mixin private OutputFormat format = new OutputFormat();

  @Option(
      names = "--ports",
      paramLabel = "PORT,PORT",
      arity = "1",
      split = ",",
      hideParamSyntax = true,
      description =
          "TCP ports on loopback, one for each instrument in the order in which they are printed;"
              + " 0 is any free one (default: 0,0).")
  private List<Integer> ports = new ArrayList<>();

  @Spec private @Nullable CommandSpec command;

  SimulateCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    checkPorts();
    try (SimulationServer server = start()) {
      surroundings.print(
          format.isJson() ? json(server.resourceNames()) : text(server.resourceNames()));
      surroundings.progress("serving unit %s with seed %d; Ctrl-C stops", unit, seed);
      untilStopped();
    } catch (BenchException e) {
      throw new CommandFailure(ExitCode.INSTRUMENT_FAILED, String.valueOf(e.getMessage()), e);
    }
    return ExitCode.STOPPED.number();
  }

  private SimulationServer start() {
    return ports.isEmpty()
        ? SimulationServer.start(unit, seed)
        : SimulationServer.start(unit, seed, ports.get(0), ports.get(1));
  }

  private void checkPorts() {
    boolean fit = ports.isEmpty() || ports.size() == INSTRUMENTS;
    boolean arePorts = ports.stream().allMatch(port -> port >= 0 && port <= HIGHEST_PORT);
    if (!fit || !arePorts) {
      throw new ParameterException(
          Objects.requireNonNull(command).commandLine(),
          "--ports is two TCP ports from 0 to 65535, such as 5025,5026, found " + ports);
    }
  }

  private void untilStopped() {
    try {
      while (true) {
        Clock.system().pause(BETWEEN_LOOKS, surroundings.stop());
      }
    } catch (StoppedException stopped) {
      surroundings.progress("the simulated bench is gone");
    }
  }

  private String json(Map<String, String> resourceNames) {
    List<Map<String, String>> instruments = new ArrayList<>();
    resourceNames.forEach(
        (profile, resource) -> {
          Map<String, String> instrument = new LinkedHashMap<>();
          instrument.put("profile", profile);
          instrument.put("resource", resource);
          instruments.add(instrument);
        });
    Map<String, @Nullable Object> document = new LinkedHashMap<>();
    document.put("unit", unit);
    document.put("seed", seed);
    document.put("instruments", instruments);
    return Json.document(document);
  }

  private static String text(Map<String, String> resourceNames) {
    TextTable table = new TextTable(TextTable.Side.LEFT, TextTable.Side.LEFT);
    resourceNames.forEach((profile, resource) -> table.add(resource, profile));
    return table.toString();
  }
}
