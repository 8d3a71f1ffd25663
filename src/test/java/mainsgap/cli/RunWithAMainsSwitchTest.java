package mainsgap.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import mainsgap.simulation.SimulatedBench;
import mainsgap.simulation.SimulatedBenchSettings;
import mainsgap.simulation.SimulatedInstrument;
import mainsgap.simulation.SimulatedUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Series whose mains the program switches, as a user runs them. */
class RunWithAMainsSwitchTest {
  private static final String RIG =
      """
      [instrument]
      profile = "ten-field-preamble"

      [unit]
      name = "Invented Lumengrove 600"

      [channels.output]
      number = 1
      probe-factor = 100
      category = "cat-iii"
      rated-volts = 600

      [channels.mains]
      number = 2
      probe-factor = 100
      category = "cat-iii"
      rated-volts = 600

      [mains-switch]
      kind = "scpi-output"
      resource = "%s"
      emergency-stop = "red button at the front"
      restores-by-itself = %b
      """;

  private final SimulatedBench bench =
      SimulatedBench.start(SimulatedBenchSettings.of(SimulatedUnit.STANDBY, 7));
  private final Path folder;

  RunWithAMainsSwitchTest(@TempDir Path folder) {
    this.folder = folder;
  }

  @AfterEach
  void closeBench() {
    bench.close();
  }

  @Test
  void unattendedRigRunsThroughAndTheEmergencyStopIsNamedFirst() throws IOException {
    CommandRun run = CommandRun.of(words(true, "--trials=2", "--rated=20ms", "--settle=0ms"));

    assertEquals(0, run.exit(), run.err());
    String told = told(run);
    int cautions = told.indexOf("Have a hardware emergency stop within reach");
    int stop = told.indexOf("red button at the front");
    int trial = told.indexOf("trial 1 ");
    assertTrue(0 <= cautions && cautions < stop && stop < trial, told);
    assertFalse(told.contains(">>>"), told);
    assertTrue(told.contains("the program opened the mains switch"), told);
    assertFalse(bench.isMainsClosed());
  }

  @Test
  void freshEnterLetsMainsClose() throws IOException {
    CommandRun run =
        CommandRun.pressingEnterAt(
            "Say that the program may close", words(false, "--trials=2", "--settle=0ms"));

    assertEquals(0, run.exit(), run.err().replaceAll("(?s).*(.{1500})$", "$1"));
    assertTrue(told(run).contains("nobody touches the rig"), run.err());
  }

  @Test
  void inputThatIsNoTerminalIsRefusedBeforeAnythingIsSwitched() throws IOException {
    CommandRun run = CommandRun.of(words(false, "--trials=2"));

    assertEquals(2, run.exit(), run.err());
    assertTrue(told(run).contains("needs a fresh Enter of a person"), run.err());
    assertTrue(bench.isMainsClosed());
    assertFalse(Files.exists(folder.resolve("series.mainsgap")));
  }

  @Test
  void ctrlCOpensTheSwitch() throws IOException {
    CommandRun run =
        CommandRun.stoppedAt("before the first trial", words(true, "--trials=5", "--settle=0ms"));

    assertEquals(130, run.exit(), run.err());
    assertFalse(bench.isMainsClosed());
    assertTrue(told(run).contains("the program opened the mains switch"), run.err());
    assertFalse(told(run).contains("Mains is left as it is"), run.err());
  }

  @Test
  void dryRunTellsEachStepAndOpensNothing() throws IOException {
    Path plan =
        Files.writeString(
            folder.resolve("plan.toml"),
            """
            [series]
            trials = 12
            event = "restoration"
            [waits]
            pause-seconds = 30
            [switching]
            random-delay-cycles = 3
            random-seed = 7
            """);

    CommandRun run = CommandRun.of(words(false, "--plan=" + plan, "--dry-run", "--trials=4"));

    assertEquals(0, run.exit(), run.err());
    String told = run.out().replaceAll("\\s+", " ");
    assertTrue(told.contains("4 trials of a restoration"), told);
    assertTrue(told.contains("even over 3 cycles of the mains, seed 7"), told);
    assertTrue(told.contains("at most 360 s"), told);
    assertTrue(told.contains("mains stays on for another 30 s"), told);
    assertTrue(told.contains("on the fresh word of a person"), told);
    assertTrue(told.contains("take 120 s"), told);
    assertTrue(bench.isMainsClosed());
    assertFalse(Files.exists(folder.resolve("series.mainsgap")));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "[series]\\ntrials = -3 | line 2: 'series.trials' is -3",
        "[sereis] | 'sereis' is not a key",
        "[switching]\\nangles-degrees = [90] | the angle is measured, not chosen",
        "? | no settings file"
      })
  void planThatCannotBeIsCodeTwo(String text, String expected) throws IOException {
    Path plan = folder.resolve("plan.toml");
    if (!text.equals("?")) {
      Files.writeString(plan, text.replace("\\n", "\n"));
    }

    CommandRun run = CommandRun.of(words(true, "--plan=" + plan));

    assertEquals(2, run.exit(), run.err());
    assertTrue(told(run).contains(expected), run.err());
    assertTrue(bench.isMainsClosed());
  }

  /** What stands on standard error, without its line ends. */
  private static String told(CommandRun run) {
    return run.err().replaceAll("\\s+", " ");
  }

  private String[] words(boolean restoresByItself, String... more) throws IOException {
    Path rig =
        Files.writeString(
            folder.resolve("rig.toml"), RIG.formatted(bench.sourceResource(), restoresByItself));
    List<String> words =
        new ArrayList<>(
            List.of(
                "run",
                "--instrument=" + bench.resource(SimulatedInstrument.TEN_FIELD_SCOPE),
                "--rig=" + rig,
                "--session=" + folder.resolve("series.mainsgap"),
                "--cautions-read"));
    words.addAll(List.of(more));
    return words.toArray(String[]::new);
  }
}
