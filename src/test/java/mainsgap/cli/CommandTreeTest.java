package mainsgap.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import mainsgap.waiting.StopRequest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CommandTreeTest {

  @Test
  void resultsThatNobodyCouldReadAreNoSuccess() {
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    PrintStream full =
        new PrintStream(
            new OutputStream() {
              @Override
              public void write(int b) throws IOException {
                throw new IOException("no space left");
              }
            },
            true,
            StandardCharsets.UTF_8);
    int exit =
        CommandTree.execute(
            new Surroundings(
                new Terminal(
                    full,
                    new PrintStream(err, true, StandardCharsets.UTF_8),
                    InputStream.nullInputStream(),
                    StandardCharsets.UTF_8,
                    false),
                Path.of("target", "state"),
                new StopRequest()),
            "--help");
    assertEquals(5, exit);
    assertTrue(err.toString(StandardCharsets.UTF_8).contains("could not be written"));
  }

  @Test
  void noCommandNamesRunWithAnExample() {
    CommandRun run = CommandRun.of();
    assertEquals(2, run.exit());
    assertEquals("", run.out());
    assertTrue(run.err().startsWith("mainsgap: no command was given: start a series"), run.err());
    assertTrue(run.err().contains("mainsgap run --simulated"), run.err());
  }

  @Test
  void theVersionIsTheOneOfTheBuild() {
    CommandRun run = CommandRun.of("--version");
    assertEquals(0, run.exit());
    assertTrue(run.out().matches("mainsgap \\d+\\.\\d+\\.\\d+\\S*\\R"), run.out());
  }

  @ParameterizedTest
  @ValueSource(strings = {"run", "analyse", "recheck", "report", "instruments", "simulate"})
  void eachCommandTeachesItself(String command) {
    CommandRun run = CommandRun.of(command, "--help");
    assertEquals(0, run.exit());
    assertEquals("", run.err());
    assertTrue(run.out().contains("Example"), run.out());
    assertTrue(run.out().contains("  mainsgap " + command + " "), run.out());
    run.out().lines().forEach(line -> assertTrue(line.length() <= 100, line));
  }

  @ParameterizedTest
  @ValueSource(strings = {"run", "analyse", "recheck", "report", "instruments", "simulate"})
  void theMainHelpNamesEachCommand(String command) {
    CommandRun run = CommandRun.of("--help");
    assertEquals(0, run.exit());
    assertTrue(run.out().matches("(?s).*\\n  " + command + " +\\S.*"), run.out());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "rnu | 'rnu'",
        "run --simulated --wrong | '--wrong'",
        "run | needs one instrument",
        "run --simulated --instrument TCPIP::127.0.0.1::5025::SOCKET | needs one instrument",
        "run --instrument TCPIP::127.0.0.1::5025::SOCKET --seed 3 | --seed belongs to --simulated",
        "run --simulated toaster | choose standby, standby-stepped, standby-quasi-square,"
            + " line-interactive, double-conversion, never-returns",
        "run --simulated --trials 0 | --trials is 1 to 10000, found 0",
        "run --simulated --trials many | 'many'",
        "run --simulated --rated 20 | '20' has no unit: add ms, s or us, such as 20ms or 0.02s",
        "run --simulated --rated soon | 'soon' is not a duration",
        "run --simulated --rated 2h | '2h' has an unknown unit",
        "run --simulated --nominal 0 | --nominal is a voltage above 0",
        "run --simulated --nominal NaN | --nominal is a voltage above 0",
        "run --simulated --frequency 400 | --frequency is 40 to 70 Hz",
        "run --simulated --event dip | 'dip' is neither loss nor restoration",
        "run --simulated --continue | add --session FILE",
        "run --simulated --format xml | 'xml' is neither text nor json",
        "analyse | FILE",
        "recheck | SESSION",
        "report --output reports | SESSION",
        "report a.mainsgap | --output",
        "report a.mainsgap --output reports --as paper | 'paper' is no form of a report: choose html",
        "instruments --probe nonsense | 'nonsense'",
        "instruments --probe TCPIP::h::1::SOCKET --identify | --identify is for looking around",
        "instruments --try ten-field-preamble | --try needs one instrument",
        "instruments --try p --probe TCPIP::h::1::SOCKET --instrument TCPIP::h::1::SOCKET | --try needs one instrument",
        "instruments --instrument TCPIP::h::1::SOCKET | --instrument belongs to --try PROFILE",
        "instruments --probe TCPIP::h::1::SOCKET --rig rig.toml | --rig belongs to --try PROFILE",
        "instruments --probe TCPIP::h::1::SOCKET --cautions-read | --cautions-read belongs to --try",
        "instruments --record talk.txt | --record needs --probe RESOURCE or --try PROFILE",
        "instruments --wait 2h | '2h' has an unknown unit",
        "instruments --wait 70s | --wait is 100ms to 60s, found 70s",
        "simulate --unit toaster | choose standby",
        "simulate --port mine=5025 | choose one of scpi-1999-digitizer",
        "simulate --port ten-field-preamble=70000 | a TCP port from 0 to 65535",
        "simulate --port ten-field-preamble=b | 'b'",
      })
  void wrongUseIsOneSentenceAndCodeTwo(String line, String expected) {
    CommandRun run = CommandRun.of(line.split(" "));
    assertEquals(2, run.exit(), run.err());
    assertEquals("", run.out());
    assertTrue(run.err().startsWith("mainsgap: "), run.err());
    assertTrue(run.err().contains(expected), run.err());
    assertEquals(1, run.err().lines().count(), run.err());
  }

  @Test
  void aRealInstrumentIsNotArmedBeforeTheCautionsAreRead() {
    CommandRun run = CommandRun.of("run", "--instrument", "TCPIP::127.0.0.1::5025::SOCKET");
    assertEquals(2, run.exit());
    assertEquals("", run.out());
    assertTrue(run.err().contains("local codes"), run.err());
    assertTrue(run.err().contains("add --cautions-read"), run.err());
  }
}
