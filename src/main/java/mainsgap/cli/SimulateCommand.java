package mainsgap.cli;

import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import mainsgap.bench.BenchException;
import mainsgap.bench.SimulatedUnits;
import mainsgap.bench.SimulationServer;
import mainsgap.waiting.Clock;
import mainsgap.waiting.StoppedException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** The simulated bench, for other programs on this machine. */
@Command(
    name = "simulate",
    mixinStandardHelpOptions = true,
    versionProvider = TopCommand.Version.class,
    sortOptions = false,
    description =
        "Serves the simulated bench on this machine's loopback address until it is stopped. Its mains"
            + " opens by itself some time after each arming and closes again afterwards.",
    footer = {
      "",
      "Example:",
      "  mainsgap simulate --unit line-interactive --seed 3",
      "",
      "It first prints the resource name of each simulated instrument and the profile that it",
      "speaks; give one of them to 'mainsgap run --instrument'. Ctrl-C stops it."
    })
final class SimulateCommand implements Callable<Integer> {
  private static final Duration BETWEEN_LOOKS = Duration.ofSeconds(1);

  private final Surroundings surroundings;

  @Option(
      names = "--unit",
      paramLabel = "UNIT",
      converter = UnitWord.class,
      description =
          "The invented unit (default: ${DEFAULT-VALUE}): standby, standby-stepped,"
              + " standby-quasi-square, line-interactive, double-conversion, never-returns.")
  private String unit = SimulatedUnits.DEFAULT;

  @Option(
      names = "--seed",
      paramLabel = "N",
      description = "The same seed gives the same trials (default: ${DEFAULT-VALUE}).")
  private long seed = 1;

  @Option(
      names = "--format",
      paramLabel = "text|json",
      converter = OutputFormat.Converter.class,
      description = "How the resource names are printed (default: text).")
  private OutputFormat format = OutputFormat.TEXT;

  SimulateCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    try (SimulationServer server = SimulationServer.start(unit, seed)) {
      surroundings.print(
          format == OutputFormat.JSON
              ? json(server.resourceNames())
              : text(server.resourceNames()));
      surroundings.progress("serving unit %s with seed %d; Ctrl-C stops", unit, seed);
      untilStopped();
    } catch (BenchException e) {
      throw new CommandFailure(ExitCode.INSTRUMENT_FAILED, String.valueOf(e.getMessage()), e);
    }
    return ExitCode.STOPPED.number();
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
