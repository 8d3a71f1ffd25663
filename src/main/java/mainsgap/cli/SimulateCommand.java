package mainsgap.cli;

import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.Callable;
import mainsgap.bench.BenchException;
import mainsgap.bench.ServedInstrument;
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
      "speaks; give one of them to 'mainsgap run --instrument'. Ctrl-C stops it.",
      "",
      "Last come the AC source and the relay that can command the mains: name one of them under",
      "[mains-switch] in a rig file. From the first command on the bench moves its mains no more by",
      "itself, so that restorations can be tried as well."
    })
final class SimulateCommand implements Callable<Integer> {
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
      names = "--port",
      paramLabel = "PROFILE=PORT",
      description =
          "TCP port on loopback for the raw socket of the instrument that answers to PROFILE, such"
              + " as ten-field-preamble=5025; may be given several times (default: any free one).")
  private Map<String, Integer> ports = new LinkedHashMap<>();

  @Spec private @Nullable CommandSpec command;

  SimulateCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    checkPorts();
    try (SimulationServer server = SimulationServer.start(unit, seed, ports)) {
      surroundings.print(format.isJson() ? json(server) : text(server));
      server.remarks().forEach(remark -> surroundings.progress("%s", remark));
      surroundings.progress("serving unit %s with seed %d; Ctrl-C stops", unit, seed);
      untilStopped();
    } catch (BenchException e) {
      throw new CommandFailure(ExitCode.INSTRUMENT_FAILED, String.valueOf(e.getMessage()), e);
    }
    return ExitCode.STOPPED.number();
  }

  private void checkPorts() {
    ports.forEach(
        (profile, port) -> {
          if (!SimulationServer.profiles().contains(profile)) {
            throw wrong(
                "--port names the profile '"
                    + profile
                    + "', which no simulated instrument answers to: choose one of "
                    + String.join(", ", SimulationServer.profiles()));
          }
          if (port < 0 || port > HIGHEST_PORT) {
            throw wrong(
                "--port takes a TCP port from 0 to 65535, such as "
                    + profile
                    + "=5025, found "
                    + port);
          }
        });
  }

  private ParameterException wrong(String sentence) {
    return new ParameterException(Objects.requireNonNull(command).commandLine(), sentence);
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

  private String json(SimulationServer server) {
    List<Map<String, String>> instruments = new ArrayList<>();
    for (ServedInstrument one : server.instruments()) {
      Map<String, String> instrument = new LinkedHashMap<>();
      instrument.put("profile", one.profile());
      instrument.put("link", one.link());
      instrument.put("resource", one.resource());
      instruments.add(instrument);
    }
    Map<String, @Nullable Object> document = new LinkedHashMap<>();
    document.put("unit", unit);
    document.put("seed", seed);
    document.put("instruments", instruments);
    List<Map<String, String>> switches = new ArrayList<>();
    server
        .mainsSwitches()
        .forEach((kind, resource) -> switches.add(Map.of("kind", kind, "resource", resource)));
    document.put("mainsSwitches", switches);
    return Json.document(document);
  }

  private static String text(SimulationServer server) {
    TextTable table = new TextTable(TextTable.Side.LEFT, TextTable.Side.LEFT, TextTable.Side.LEFT);
    server.instruments().forEach(one -> table.add(one.resource(), one.link(), one.profile()));
    server.mainsSwitches().forEach((kind, resource) -> table.add(resource, "mains switch", kind));
    return table.toString();
  }
}
