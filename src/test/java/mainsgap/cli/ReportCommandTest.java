package mainsgap.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import mainsgap.session.SessionHeader;
import mainsgap.session.SessionLog;
import mainsgap.session.Trial;
import mainsgap.signal.Capture;
import mainsgap.signal.CodeFormat;
import mainsgap.signal.Event;
import mainsgap.signal.Scale;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.Waveform;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.Outcome;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReportCommandTest {
  private static final Instant AT = Instant.parse("2026-01-01T00:00:00Z");

  private final Path folder;
  private final Path reports;

  ReportCommandTest(@TempDir Path folder) {
    this.folder = folder;
    this.reports = folder.resolve("new").resolve("reports");
  }

  @Test
  void thePageOfOneSessionIsNamedLikeItsFile() throws IOException {
    CommandRun run = report(session("shelf-3", SeriesExamples.MEASURED));
    assertEquals(0, run.exit(), run.err());
    Path page = reports.resolve("shelf-3.html");
    assertEquals(page + System.lineSeparator(), run.out().replace("\n", System.lineSeparator()));
    assertTrue(Files.readString(page).contains("Shelf unit 3"));
    assertEquals(List.of(page), written());
  }

  @Test
  void failedTrialsAreNoFailureOfTheReport() {
    CommandRun run = report(session("shelf-3", SeriesExamples.NO_RETURN));
    assertEquals(0, run.exit(), run.err());
  }

  @Test
  void severalSessionsShareOnePage() throws IOException {
    CommandRun run =
        CommandRun.of(
            "report",
            session("shelf-3", SeriesExamples.MEASURED).toString(),
            session("shelf-4", SeriesExamples.REFUSED).toString(),
            "--output",
            reports.toString(),
            "--as",
            "HTML",
            "--format=json");
    assertEquals(0, run.exit(), run.err());
    var document = new ObjectMapper().readTree(run.out());
    Path page = Path.of(document.get("written").get("html").asText());
    assertEquals(reports.resolve("report.html"), page);
    assertEquals(2, document.get("sessions").size());
    assertEquals(64, document.get("sessions").get(1).get("lastSeal").asText().length());
    String html = Files.readString(page);
    assertTrue(html.contains("shelf-3.mainsgap") && html.contains("shelf-4.mainsgap"));
  }

  @Test
  void theBudgetOnThePageIsTheOneThatRecheckPrints() throws IOException {
    Path session = folder.resolve("simulated.mainsgap");
    CommandRun series =
        CommandRun.of(
            "run",
            "--simulated",
            "--trials=1",
            "--rated=20ms",
            "--seed=7",
            "--session",
            session.toString());
    assertEquals(0, series.exit(), series.err());
    assertEquals(0, report(session).exit());
    String html = Files.readString(reports.resolve("simulated.html"));
    List<String> lines =
        budget(CommandRun.of("recheck", session.toString(), "--uncertainty-budget"));
    assertTrue(lines.size() > 8, lines::toString);
    for (String line : lines) {
      String[] cells = line.strip().split(" {2,}", -1);
      String row = html.lines().filter(one -> one.contains(">" + cells[0])).findFirst().orElse("");
      assertTrue(row.contains(">" + cells[1].replace("<", "&lt;") + "<"), line + " in " + row);
    }
    assertFalse(html.contains(">not known<"), "a line of the budget has no source");
    assertTrue(html.contains(">Output voltage<"), "the trace is drawn");
  }

  /** The lines between the head of the budget and its sum. */
  private static List<String> budget(CommandRun recheck) {
    List<String> all = recheck.out().lines().toList();
    int head = all.indexOf("uncertainty, trial 1") + 2;
    int sum = head;
    while (!all.get(sum).startsWith("combined")) {
      sum++;
    }
    return all.subList(head, sum);
  }

  @Test
  void fileThatIsThereStaysAndIsNamed() throws IOException {
    Path session = session("shelf-3", SeriesExamples.MEASURED);
    Files.createDirectories(reports);
    Path page = Files.writeString(reports.resolve("shelf-3.html"), "mine");
    CommandRun run = report(session);
    assertEquals(2, run.exit(), run.err());
    assertEquals("", run.out());
    assertEquals(
        "mainsgap: there is a file "
            + page
            + " already: name another --output, or move that file away",
        run.err().strip());
    assertEquals("mine", Files.readString(page));
  }

  @Test
  void whatIsNoSessionIsOneSentenceAndCodeFive() throws IOException {
    Path text = Files.writeString(folder.resolve("text.mainsgap"), "not a session\n".repeat(200));
    for (Path file : new Path[] {text, folder, folder.resolve("missing.mainsgap")}) {
      CommandRun run = report(file);
      assertEquals(5, run.exit(), run.err());
      assertEquals("", run.out());
      assertTrue(run.err().startsWith("mainsgap: "), run.err());
      assertTrue(run.err().contains(file.toString()), run.err());
      assertEquals(1, run.err().lines().count(), run.err());
    }
    assertFalse(Files.exists(reports));
  }

  @Test
  void rawCaptureWithABrokenSealIsNotReported() throws SQLException {
    Path session = session("shelf-3", SeriesExamples.MEASURED);
    try (var connection = DriverManager.getConnection("jdbc:sqlite:" + session);
        var statement = connection.createStatement()) {
      for (String sql :
          List.of("DROP TRIGGER blocks_never_change", "UPDATE block SET packed = x'00'")) {
        int unused = statement.executeUpdate(sql);
      }
    }
    CommandRun run = report(session);
    assertEquals(5, run.exit(), run.err());
    assertTrue(run.err().contains("the seal of entry 2 of the session file"), run.err());
    assertFalse(Files.exists(reports));
  }

  @Test
  void sessionInWhichNothingWasMeasuredIsReportedWithCodeThree() throws IOException {
    for (Path session : List.of(session("empty"), session("refused", SeriesExamples.REFUSED))) {
      CommandRun run = report(session);
      assertEquals(3, run.exit(), run.err());
      assertTrue(run.err().contains("no trial in it is measured"), run.err());
    }
    assertEquals(2, written().size());
  }

  @Test
  void folderThatCannotBeMadeIsOneSentenceAndCodeFive() throws IOException {
    Path session = session("shelf-3", SeriesExamples.MEASURED);
    Path file = Files.writeString(folder.resolve("file"), "mine");
    String below = file.resolve("reports").toString();
    CommandRun run = CommandRun.of("report", session.toString(), "--output", below);
    assertEquals(5, run.exit(), run.err());
    assertTrue(
        run.err().contains("; choose another folder") || run.err().contains("no folder"),
        run.err());
  }

  @Test
  void outputThatIsNoFolderIsWrongUse() throws IOException {
    Path session = session("shelf-3", SeriesExamples.MEASURED);
    Path file = Files.writeString(folder.resolve("file"), "mine");
    for (String output : List.of(file.toString(), "")) {
      CommandRun run = CommandRun.of("report", session.toString(), "--output", output);
      assertEquals(2, run.exit(), run.err());
      assertTrue(run.err().contains("--output '" + output + "' is no folder"), run.err());
    }
    assertEquals("mine", Files.readString(file));
  }

  @Test
  void sameSessionTwiceIsWrongUse() throws IOException {
    Path session = session("shelf-3", SeriesExamples.MEASURED);
    Path copy = Files.copy(session, folder.resolve("copy.mainsgap"));
    CommandRun run =
        CommandRun.of(
            "report", session.toString(), copy.toString(), "--output", reports.toString());
    assertEquals(2, run.exit(), run.err());
    assertTrue(run.err().contains("copy.mainsgap is the same session as "), run.err());
    assertFalse(Files.exists(reports));
  }

  @Test
  void stoppedReportLeavesNoFile() throws IOException {
    Path first = session("shelf-3", SeriesExamples.MEASURED);
    Path second = session("shelf-4", SeriesExamples.MEASURED);
    CommandRun run =
        CommandRun.stoppedAt(
            "shelf-3.mainsgap intact",
            "report",
            first.toString(),
            second.toString(),
            "--output",
            reports.toString());
    assertEquals(130, run.exit(), run.err());
    assertFalse(Files.exists(reports));
  }

  private CommandRun report(Path session) {
    return CommandRun.of("report", session.toString(), "--output", reports.toString());
  }

  private List<Path> written() throws IOException {
    try (Stream<Path> files = Files.list(reports)) {
      return files.toList();
    }
  }

  private Path session(String name, Outcome... outcomes) {
    Path file = folder.resolve(name + ".mainsgap");
    SessionHeader header =
        new SessionHeader(
            AT,
            "0.0.0",
            true,
            "Shelf unit 3",
            SeriesExamples.CLAIM,
            new MeasuringTask(Event.LOSS, 230, 50),
            "none",
            Map.of(),
            Map.of());
    try (SessionLog log = SessionLog.create(file, header)) {
      for (int i = 0; i < outcomes.length; i++) {
        log.append(new Trial(i + 1, AT, flatLine(), outcomes[i], null));
      }
    }
    return file;
  }

  private static Capture flatLine() {
    return Capture.ofOutput(
        new TimeAxis(0, 1e-4, 4000, 0),
        new Waveform(new byte[4000], CodeFormat.SIGNED_8, Scale.VOLTS));
  }
}
