package mainsgap.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Map;
import mainsgap.session.SessionHeader;
import mainsgap.session.SessionLog;
import mainsgap.session.Trial;
import mainsgap.signal.Capture;
import mainsgap.signal.CodeFormat;
import mainsgap.signal.Event;
import mainsgap.signal.Scale;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.Waveform;
import mainsgap.transfer.claim.DecisionRule;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.Outcome;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecheckCommandTest {
  private static final MeasuringTask TASK = new MeasuringTask(Event.LOSS, 230, 50);
  private static final Instant AT = Instant.parse("2026-01-01T00:00:00Z");

  private final Path folder;

  RecheckCommandTest(@TempDir Path folder) {
    this.folder = folder;
  }

  @Test
  void aSessionThatStillSaysTheSameIsCodeZero() {
    Capture flat = flatLine();
    Path file =
        session(JudgedCapture.of(flat, TASK, SeriesExamples.CLAIM, DecisionRule.GUARDED).outcome());
    CommandRun run = CommandRun.of("recheck", file.toString());
    assertEquals(0, run.exit(), run.err());
    assertTrue(run.out().contains("all figures as stored"), run.out());
  }

  @Test
  void otherFiguresUnderIntactSealsAreNamedAndCodeOne() {
    CommandRun run = CommandRun.of("recheck", session(SeriesExamples.MEASURED).toString());
    assertEquals(1, run.exit(), run.err());
    assertTrue(run.out().contains("transferTimeMs"), run.out());
    assertTrue(run.out().contains("8.41678"), run.out());
  }

  @Test
  void scriptsGetTheDifferencesAsJson() throws IOException {
    CommandRun run =
        CommandRun.of("recheck", session(SeriesExamples.MEASURED).toString(), "--format=json");
    assertEquals(1, run.exit(), run.err());
    var document = new ObjectMapper().readTree(run.out());
    assertEquals(1, document.get("trials").asInt());
    assertEquals("outcome", document.get("differences").get(0).get("figure").asText());
    assertEquals(64, document.get("lastSeal").asText().length());
  }

  @Test
  void whatIsNoSessionIsOneSentenceAndCodeFive() throws IOException {
    Path text = Files.writeString(folder.resolve("text.mainsgap"), "not a session\n".repeat(200));
    for (Path file : new Path[] {text, folder, folder.resolve("missing.mainsgap")}) {
      CommandRun run = CommandRun.of("recheck", file.toString());
      assertEquals(5, run.exit(), run.err());
      assertEquals("", run.out());
      assertTrue(run.err().startsWith("mainsgap: "), run.err());
      assertEquals(1, run.err().lines().count(), run.err());
    }
  }

  private Path session(Outcome outcome) {
    Path file = folder.resolve("series.mainsgap");
    SessionHeader header =
        new SessionHeader(
            AT,
            "0.0.0",
            true,
            "Shelf unit 3",
            SeriesExamples.CLAIM,
            TASK,
            "none",
            Map.of(),
            Map.of());
    try (SessionLog log = SessionLog.create(file, header)) {
      log.append(new Trial(1, AT, flatLine(), outcome, null));
    }
    return file;
  }

  /** A record in which there is nothing to measure. */
  private static Capture flatLine() {
    return Capture.ofOutput(
        new TimeAxis(0, 1e-4, 4000, 0),
        new Waveform(new byte[4000], CodeFormat.SIGNED_8, Scale.VOLTS));
  }
}
