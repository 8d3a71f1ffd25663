package mainsgap.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import mainsgap.session.SessionReader;
import mainsgap.simulation.ScopeFault;
import mainsgap.simulation.SimulatedBench;
import mainsgap.simulation.SimulatedBenchSettings;
import mainsgap.simulation.SimulatedInstrument;
import mainsgap.simulation.SimulatedUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Series on an instrument that is known by its resource name alone. */
class RunOnAnInstrumentTest {
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
      """;

  private final Path session;
  private final Path rig;

  RunOnAnInstrumentTest(@TempDir Path folder) throws IOException {
    session = folder.resolve("series.mainsgap");
    rig = Files.writeString(folder.resolve("rig.toml"), RIG);
  }

  @Test
  void cautionsComeBeforeThePromptAndTheHandIsAskedForBothMoves() {
    try (SimulatedBench bench = bench(ScopeFault.NONE)) {
      CommandRun run = on(bench, "--trials=2", "--rated=20ms", "--settle=0ms");
      assertEquals(0, run.exit(), run.err());
      int cautions = run.err().indexOf("local codes");
      int open = run.err().indexOf(">>> Open the mains switch now");
      int close = run.err().indexOf(">>> Close the mains switch again");
      assertTrue(0 <= cautions && cautions < open && open < close, run.err());
      assertTrue(run.err().contains("scope    "), run.err());
      assertTrue(run.err().contains("its battery shows no gap"), run.err());
      assertTrue(run.err().contains("before the first trial: output "), run.err());
      assertTrue(run.err().contains("switch again   (1 of 2 measured)"), run.err());
      assertFalse(run.out().contains("local codes"), run.out());
      assertTrue(run.out().contains("Invented Lumengrove 600"), run.out());
    }
  }

  @ParameterizedTest
  @CsvSource({
    "NEVER_TRIGGERS, 3",
    "CLOSES_IN_MID_BLOCK, 4",
    "SHORT_BLOCK, 4",
    "TEXT_FOR_NUMBER, 4",
    "ANSWERS_WITH_ERROR, 4"
  })
  void anInstrumentThatFailsIsOneSentenceAndLosesNothing(ScopeFault fault, int code) {
    try (SimulatedBench bench = bench(fault)) {
      CommandRun run = on(bench, "--trials=1", "--trigger-wait=200ms", "--settle=0ms");
      assertEquals(code, run.exit(), run.err());
      List<String> complaints =
          run.err().lines().filter(line -> line.startsWith("mainsgap: ")).toList();
      assertEquals(1, complaints.size(), run.err());
      assertFalse(run.err().contains("Exception"), run.err());
      assertEquals(code == 3, run.err().contains("The instrument is disarmed"), run.err());
      assertEquals(code == 4, run.err().contains("may still be armed"), run.err());
    }
  }

  @Test
  void whatWasLoggedBeforeTheFailureStays() {
    try (SimulatedBench bench = bench(ScopeFault.NONE)) {
      assertEquals(0, on(bench, "--trials=1", "--settle=0ms").exit());
      bench.setFault(ScopeFault.CLOSES_IN_MID_BLOCK);
      CommandRun run = on(bench, "--trials=1", "--settle=0ms", "--continue");
      assertEquals(4, run.exit(), run.err());
    }
    try (SessionReader reader = SessionReader.open(session)) {
      assertEquals(1, reader.session().trials().size());
    }
  }

  @Test
  void nobodyAtTheOtherEndIsCodeFour() {
    int port;
    try (SimulatedBench bench = bench(ScopeFault.NONE)) {
      port = bench.port(SimulatedInstrument.TEN_FIELD_SCOPE);
    }
    CommandRun run = onResource("TCPIP::127.0.0.1::" + port + "::SOCKET");
    assertEquals(4, run.exit(), run.err());
    assertFalse(Files.exists(session));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "nonsense | probe-factor = 100 | probe-factor = 100 | nonsense",
        "TCPIP::127.0.0.1::1::SOCKET | probe-factor | probe-fcator | probe-fcator",
        "TCPIP::127.0.0.1::1::SOCKET | rated-volts = 600 | rated-volts = 150 | 150 V"
      })
  void aWrongResourceOrRigIsCodeTwo(String resource, String found, String other, String expected)
      throws IOException {
    Files.writeString(rig, RIG.replace(found, other));
    CommandRun run = onResource(resource);
    assertEquals(2, run.exit(), run.err());
    assertTrue(run.err().contains(expected), run.err());
  }

  @Test
  void aRealInstrumentNeedsARig() {
    CommandRun run =
        CommandRun.of("run", "--instrument=TCPIP::127.0.0.1::1::SOCKET", "--cautions-read");
    assertEquals(2, run.exit(), run.err());
    assertTrue(run.err().contains("--rig FILE"), run.err());
  }

  private static SimulatedBench bench(ScopeFault fault) {
    return SimulatedBench.start(
        SimulatedBenchSettings.of(SimulatedUnit.STANDBY, 7).withAutonomousMains().withFault(fault));
  }

  private CommandRun on(SimulatedBench bench, String... words) {
    return onResource(bench.resource(SimulatedInstrument.TEN_FIELD_SCOPE), words);
  }

  private CommandRun onResource(String resource, String... words) {
    List<String> all =
        new ArrayList<>(
            List.of(
                "run",
                "--instrument=" + resource,
                "--rig=" + rig,
                "--session=" + session,
                "--cautions-read"));
    all.addAll(List.of(words));
    return CommandRun.of(all.toArray(String[]::new));
  }
}
