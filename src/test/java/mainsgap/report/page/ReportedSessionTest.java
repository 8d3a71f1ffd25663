package mainsgap.report.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import mainsgap.report.InventedSessions;
import mainsgap.session.SessionLog;
import mainsgap.session.SessionReader;
import mainsgap.session.Trial;
import mainsgap.signal.Capture;
import mainsgap.signal.CodeFormat;
import mainsgap.signal.Scale;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.Waveform;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.waiting.StopRequest;
import mainsgap.waiting.StoppedException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReportedSessionTest {
  private static final Instant AT = Instant.parse("2026-01-01T00:00:00Z");

  private final Path file;

  ReportedSessionTest(@TempDir Path folder) {
    this.file = folder.resolve("series.mainsgap");
  }

  @Test
  void showsTheLongestTransfersThatStand() {
    log(
        InventedSessions.measured(5, 3),
        InventedSessions.measured(9, 3),
        InventedSessions.refused(),
        InventedSessions.noInterruption(),
        InventedSessions.measured(30, 3),
        InventedSessions.measured(7, 3),
        InventedSessions.noReturn(300),
        InventedSessions.measured(6, 3));
    try (SessionLog log = SessionLog.resume(file)) {
      log.setAside(5, "the lead slipped", AT);
    }
    ReportedSession reported = read(new StopRequest());
    assertEquals(8, reported.session().trials().size());
    assertEquals(
        List.of("2", "6", "7", "8"),
        reported.traces().stream()
            .map(trace -> trace.name().replaceAll(".*trial (\\d+):.*", "$1"))
            .toList());
  }

  @Test
  void nameThatTurnsTextRoundIsToldOnItsOwn() {
    try (SessionLog log =
        SessionLog.create(
            file,
            InventedSessions.header("Glow\u202Ebox", InventedSessions.LOSS_AT_230, Map.of()))) {
      log.append(new Trial(1, AT, flatLine(), InventedSessions.measured(5, 3), null));
    }
    assertTrue(read(new StopRequest()).traces().get(0).name().startsWith("Glow box, trial 1"));
  }

  @Test
  void readsNoMoreCapturesOnceStopped() {
    log(InventedSessions.measured(5, 3));
    StopRequest stop = new StopRequest();
    stop.request();
    assertThrows(StoppedException.class, () -> read(stop));
  }

  private ReportedSession read(StopRequest stop) {
    try (SessionReader reader = SessionReader.open(file)) {
      return ReportedSession.read(reader, stop);
    }
  }

  private void log(Outcome... outcomes) {
    try (SessionLog log =
        SessionLog.create(
            file,
            InventedSessions.header(
                "Invented Glowbox 300", InventedSessions.LOSS_AT_230, Map.of()))) {
      for (int i = 0; i < outcomes.length; i++) {
        log.append(new Trial(i + 1, AT, flatLine(), outcomes[i], null));
      }
    }
  }

  private static Capture flatLine() {
    return Capture.ofOutput(
        new TimeAxis(0, 1e-4, 400, 0),
        new Waveform(new byte[400], CodeFormat.SIGNED_8, Scale.VOLTS));
  }
}
