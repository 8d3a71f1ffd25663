package mainsgap.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import mainsgap.waiting.StopRequest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AnalyseCommandTest {
  private static final double INTERVAL_SECONDS = 20e-6;
  private static final double LOSS_SECONDS = 0.105;
  private static final double RETURN_SECONDS = 0.113;

  private final Path folder;

  AnalyseCommandTest(@TempDir Path folder) {
    this.folder = folder;
  }

  @Test
  void aGoodCaptureIsMeasuredAndPasses() throws IOException {
    CommandRun run =
        CommandRun.of("analyse", capture().toString(), "--rated", "20ms", "--format", "json");
    assertEquals(0, run.exit(), run.err());
    assertEquals("", run.err());
    JsonNode document = new ObjectMapper().readTree(run.out());
    assertEquals(List.of("captures"), SeriesJsonTest.names(document));
    JsonNode capture = document.get("captures").get(0);
    assertEquals(SeriesJsonTest.CAPTURE_NAMES, SeriesJsonTest.names(capture));
    assertEquals("measured", capture.get("outcome").asText());
    assertEquals("loss", capture.get("event").asText());
    assertEquals("PASS", capture.get("verdict").asText());
    assertEquals(230, capture.get("nominalVolts").asDouble());
    assertEquals(
        1e3 * (RETURN_SECONDS - LOSS_SECONDS), capture.get("transferTimeMs").asDouble(), 0.2);
  }

  @Test
  void theTableNamesTheFileAndTheVerdict() throws IOException {
    CommandRun run = CommandRun.of("analyse", capture().toString(), "--rated", "20ms");
    assertEquals(0, run.exit(), run.err());
    assertTrue(run.out().contains("good.csv"), run.out());
    assertTrue(run.out().contains("PASS"), run.out());
    assertTrue(run.out().contains("±"), run.out());
  }

  @Test
  void aGapBeyondTheDeclaredTimeIsCodeOne() throws IOException {
    CommandRun run = CommandRun.of("analyse", capture().toString(), "--rated", "5ms");
    assertEquals(1, run.exit(), run.err());
    assertTrue(run.out().contains("is longer than the declared"), run.out());
  }

  @Test
  void anotherDecisionRuleIsWrittenWithItsResult() throws IOException {
    CommandRun run =
        CommandRun.of("analyse", capture().toString(), "--rated=5ms", "--decision-rule=simple");
    assertEquals(1, run.exit(), run.err());
    String unwrapped = run.out().replaceAll("\\s+", " ");
    assertTrue(
        unwrapped.contains("(taken as a maximum): fail (probability of conformance below 0.01 %)"),
        run.out());
    assertTrue(run.out().contains("judged by simple acceptance"), run.out());
  }

  @Test
  void theToleranceCurvesAreToldWhenAsked() throws IOException {
    CommandRun run = CommandRun.of("analyse", capture().toString(), "--voltage-tolerance");
    assertEquals(0, run.exit(), run.err());
    for (String said :
        List.of(
            "ITI curve: inside, 0 %",
            "SEMI F47: not covered",
            "IEC 61000-4-11 class 3: inside",
            "a break of up to 10 ms",
            "EN 50160: below EN 50160 classification",
            "ATX12VO")) {
      assertTrue(run.out().contains(said), run.out());
    }
    CommandRun json =
        CommandRun.of("analyse", capture().toString(), "--voltage-tolerance", "--format", "json");
    assertEquals(0, json.exit(), json.err());
    JsonNode tolerance =
        new ObjectMapper().readTree(json.out()).get("captures").get(0).get("voltageTolerance");
    assertEquals("inside", tolerance.get("gap").get(0).get("standing").asText());
    assertTrue(tolerance.get("overshoot").isEmpty(), tolerance.toString());
  }

  @Test
  void allFiguresOfTheReturnAreToldWhenAsked() throws IOException {
    CommandRun run = CommandRun.of("analyse", capture().toString(), "--return-figures");
    for (String said :
        List.of(
            "all figures of the return, file ",
            "DC offset of nominal RMS",
            "crest factor",
            "re-strikes",
            "settles within ±3 % after",
            "residual over 5 cycles",
            "% over 10 cycles")) {
      assertTrue(run.out().contains(said), run.out());
    }
  }

  @Test
  void theBudgetSaysThatTheTimeBaseIsAssumedUnlessItIsStated() throws IOException {
    String file = capture().toString();
    CommandRun assumed = CommandRun.of("analyse", file, "--uncertainty-budget");
    assertTrue(assumed.out().contains("time base 100 ppm, assumed"), assumed.out());
    assertFalse(assumed.out().contains(" 0.00 µs"), assumed.out());
    CommandRun stated =
        CommandRun.of("analyse", file, "--uncertainty-budget", "--time-base-ppm=25");
    assertTrue(stated.out().contains("time base 25 ppm "), stated.out());
  }

  @Test
  void aDeclaredTimeIsTakenAsItIsPrinted() throws IOException {
    String file = capture().toString();
    CommandRun below = CommandRun.of("analyse", file, "--rated=<20ms");
    assertEquals(0, below.exit(), below.err());
    assertTrue(below.out().contains("PASS"), below.out());
    CommandRun typical = CommandRun.of("analyse", file, "--rated=20ms", "--rated-kind=typical");
    assertEquals(0, typical.exit(), typical.err());
    assertFalse(typical.out().contains("PASS"), typical.out());
    assertTrue(typical.out().contains("is within the declared typical 20 ms"), typical.out());
    CommandRun bare = CommandRun.of("analyse", file, "--rated-kind=typical");
    assertEquals(2, bare.exit(), bare.err());
    assertTrue(bare.err().contains("add --rated TIME"), bare.err());
  }

  @Test
  void whatStandsBesideAPassIsTold() throws IOException {
    CommandRun run =
        CommandRun.of("analyse", twoGaps().toString(), "--rated=20ms", "--mains-column=mains");
    assertEquals(0, run.exit(), run.err());
    String out = run.out().replaceAll("\\s+", " ");
    assertTrue(out.contains("PASS"), out);
    assertTrue(out.contains("usable after 41.0"), out);
    assertTrue(out.contains("1 further interruption after the return, of 8."), out);
    assertTrue(out.contains("mains channel: cannot tell: 23"), out);
    assertTrue(out.contains("is its probe factor right?"), out);
  }

  /** A second gap 25 ms after the first; the mains channel lacks its probe factor. */
  private Path twoGaps() throws IOException {
    StringBuilder text = new StringBuilder("Time (s),Voltage (V),mains (V)\n");
    for (int i = 0; i < 20_000; i++) {
      double seconds = i * INTERVAL_SECONDS;
      double since = 1e3 * (seconds - LOSS_SECONDS);
      boolean gap = (since >= 0 && since < 8) || (since >= 33 && since < 41);
      double sine = 325.27 * Math.sin(2 * Math.PI * 50 * seconds);
      double noise = 0.3 * Math.sin(i * 12.9898 + Math.sin(i * 78.233) * 437.5);
      text.append(
          String.format(
              Locale.ROOT, "%.6f,%.3f,%.3f%n", seconds, (gap ? 0 : sine) + noise, sine / 10));
    }
    return Files.writeString(folder.resolve("two.csv"), text, StandardCharsets.UTF_8);
  }

  @Test
  void aDecisionRuleWithNothingToJudgeIsWrongUse() throws IOException {
    CommandRun bare = CommandRun.of("analyse", capture().toString(), "--decision-rule=simple");
    assertEquals(2, bare.exit(), bare.err());
    assertTrue(bare.err().contains("add --rated TIME"), bare.err());
    CommandRun unknown =
        CommandRun.of("analyse", capture().toString(), "--rated=5ms", "--decision-rule=lenient");
    assertEquals(2, unknown.exit(), unknown.err());
    assertTrue(unknown.err().contains("guarded, simple, two-way, four-way"), unknown.err());
  }

  @Test
  void anotherNominalVoltageIsRefusedAndNothingIsMeasured() throws IOException {
    CommandRun run = CommandRun.of("analyse", capture().toString(), "--nominal", "120");
    assertEquals(3, run.exit(), run.err());
    assertTrue(run.out().contains("refused"), run.out());
  }

  @Test
  void wordsAmongTheNumbersAreReportedWithTheirLine() throws IOException {
    List<String> lines = new ArrayList<>(Files.readAllLines(capture()));
    lines.set(1000, "here the, scope stuttered");
    Path file = Files.write(folder.resolve("words.csv"), lines);
    CommandRun run = CommandRun.of("analyse", file.toString(), "--format", "json");
    assertEquals(3, run.exit());
    assertTrue(run.err().startsWith("mainsgap: "), run.err());
    assertTrue(run.err().contains("words.csv") && run.err().contains("1001"), run.err());
    assertEquals(1, run.err().lines().count(), run.err());
    JsonNode capture = new ObjectMapper().readTree(run.out()).get("captures").get(0);
    assertEquals("refused", capture.get("outcome").asText());
    assertTrue(capture.get("reason").asText().contains("1001"));
  }

  @Test
  void oneBadFileDoesNotHideTheGoodOne() throws IOException {
    Path empty = Files.createFile(folder.resolve("empty.csv"));
    CommandRun run =
        CommandRun.of(
            "analyse", empty.toString(), capture().toString(), "--rated=20ms", "--format=json");
    assertEquals(1, run.exit());
    assertTrue(run.err().contains("empty.csv"), run.err());
    JsonNode captures = new ObjectMapper().readTree(run.out()).get("captures");
    assertEquals("refused", captures.get(0).get("outcome").asText());
    assertEquals("measured", captures.get(1).get("outcome").asText());
  }

  @Test
  void whatIsNoCaptureFileGetsOneSentence() throws IOException {
    byte[] binary = new byte[4096];
    new java.util.Random(1).nextBytes(binary);
    List<Path> files =
        List.of(
            Files.write(folder.resolve("binary.csv"), binary),
            Files.createFile(folder.resolve("empty.csv")),
            Files.createDirectory(folder.resolve("folder.csv")),
            folder.resolve("missing.csv"));
    for (Path file : files) {
      CommandRun run = CommandRun.of("analyse", file.toString());
      assertEquals(3, run.exit(), run.err());
      assertTrue(run.err().startsWith("mainsgap: "), run.err());
      assertTrue(run.err().contains(String.valueOf(file.getFileName())), run.err());
      assertEquals(1, run.err().lines().count(), run.err());
    }
  }

  @Test
  void anIntervalStandsInForATimeColumn() throws IOException {
    List<String> volts =
        Files.readAllLines(capture()).stream()
            .skip(1)
            .map(line -> line.substring(line.indexOf(',') + 1))
            .toList();
    Path file = Files.write(folder.resolve("volts.csv"), volts);
    CommandRun run =
        CommandRun.of("analyse", file.toString(), "--interval", "20us", "--rated", "20ms");
    assertEquals(0, run.exit(), run.err());
  }

  @Test
  void aColumnThatIsNotThereIsReported() throws IOException {
    CommandRun run = CommandRun.of("analyse", capture().toString(), "--voltage-column", "current");
    assertEquals(3, run.exit(), run.out());
    assertTrue(run.err().contains("current"), run.err());
  }

  @Test
  void anIntervalBesideATimeColumnIsWrongUse() throws IOException {
    CommandRun run =
        CommandRun.of("analyse", capture().toString(), "--interval=20us", "--time-column=1");
    assertEquals(2, run.exit());
    assertTrue(run.err().contains("exclude each other"), run.err());
  }

  @Test
  void aStopEndsBetweenTwoFiles() throws IOException {
    StopRequest stop = new StopRequest();
    stop.request();
    CommandRun run = CommandRun.until(stop, "analyse", capture().toString());
    assertEquals(130, run.exit());
  }

  /** 230 V, 50 Hz, a clean gap from 5 ms after a zero crossing on, then the same supply again. */
  private Path capture() throws IOException {
    StringBuilder text = new StringBuilder("Time (s),Voltage (V)\n");
    for (int i = 0; i < 20_000; i++) {
      double seconds = i * INTERVAL_SECONDS;
      boolean fed = seconds < LOSS_SECONDS || seconds >= RETURN_SECONDS;
      double noise = 0.3 * Math.sin(i * 12.9898 + Math.sin(i * 78.233) * 437.5);
      double volts = (fed ? 325.27 * Math.sin(2 * Math.PI * 50 * seconds) : 0) + noise;
      text.append(String.format(Locale.ROOT, "%.6f,%.3f%n", seconds, volts));
    }
    return Files.writeString(folder.resolve("good.csv"), text, StandardCharsets.UTF_8);
  }
}
