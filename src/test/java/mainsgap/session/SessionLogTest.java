package mainsgap.session;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import mainsgap.signal.Capture;
import mainsgap.signal.Waveform;
import mainsgap.transfer.outcome.Figures;
import mainsgap.transfer.outcome.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SessionLogTest {
  private final Path folder;

  SessionLogTest(@TempDir Path folder) {
    this.folder = folder;
  }

  private Path file() {
    return folder.resolve("a.mainsgap");
  }

  @Test
  void whatIsAppendedIsReadBack() {
    String last;
    try (SessionLog log = SessionLog.create(file(), SessionFixtures.header())) {
      log.append(SessionFixtures.remark(Remark.Kind.SERIES_STARTED));
      log.append(SessionFixtures.trial(1));
      log.append(SessionFixtures.refused(2));
      log.setAside(1, "the switch was opened by hand too early", SessionFixtures.at(3));
      last = log.append(SessionFixtures.remark(Remark.Kind.COMPLETE));
      assertEquals(last, log.lastSeal());
      assertEquals(3, log.nextTrialNumber());
    }
    try (SessionReader reader = SessionReader.open(file())) {
      Session session = reader.session();
      assertEquals(SessionFixtures.header(), session.header());
      assertEquals(
          List.of(
              SessionFixtures.remark(Remark.Kind.SERIES_STARTED),
              SessionFixtures.remark(Remark.Kind.COMPLETE)),
          session.remarks());
      assertEquals(Ending.COMPLETE, session.ending());
      assertEquals(last, session.lastSeal());
      assertEquals(6, session.entryCount());
      LoggedTrial first = session.trials().get(0);
      assertEquals(
          Figures.of(SessionFixtures.measured(1), SessionFixtures.PASSED, 230), first.figures());
      assertEquals(SessionFixtures.measured(1).budget(), first.budget());
      assertEquals(Verdict.PASS, first.verdict().orElseThrow());
      assertEquals(SessionFixtures.at(1), first.at());
      assertEquals("the switch was opened by hand too early", first.setAsideReason());
      LoggedTrial second = session.trials().get(1);
      assertTrue(second.isRefused());
      assertNull(second.setAsideReason());
      assertEquals(List.of(second), session.standingTrials());
      assertSameCapture(SessionFixtures.capture(1), reader.capture(1));
      assertSameCapture(SessionFixtures.capture(2), reader.capture(2));
    }
  }

  private static void assertSameCapture(Capture expected, Capture found) {
    assertEquals(expected.time(), found.time());
    assertEquals(expected.waveforms().keySet(), found.waveforms().keySet());
    expected
        .waveforms()
        .forEach(
            (role, waveform) -> {
              Waveform same = found.waveform(role).orElseThrow();
              assertArrayEquals(waveform.block(), same.block());
              assertEquals(waveform.format(), same.format());
              assertEquals(waveform.scale(), same.scale());
            });
  }

  @Test
  void eachEntryIsThereForReadersAtOnceAndOneFileIsLeft() throws IOException {
    try (SessionLog log = SessionLog.create(file(), SessionFixtures.header())) {
      for (int number = 1; number <= 3; number++) {
        log.append(SessionFixtures.trial(number));
        try (SessionReader reader = SessionReader.open(file());
            Stream<Path> files = Files.list(folder)) {
          assertEquals(number, reader.session().trials().size());
          assertEquals(log.lastSeal(), reader.session().lastSeal());
          assertEquals(List.of(file()), files.toList());
        }
      }
    }
  }

  @Test
  void resumeGoesOnWhereTheSessionEnded() {
    String seal;
    try (SessionLog log = SessionLog.create(file(), SessionFixtures.header())) {
      log.append(SessionFixtures.trial(1));
      seal = log.append(SessionFixtures.remark(Remark.Kind.STOPPED));
    }
    try (SessionLog log = SessionLog.resume(file())) {
      assertEquals(SessionFixtures.header(), log.header());
      assertEquals(2, log.nextTrialNumber());
      assertEquals(seal, log.lastSeal());
      log.append(SessionFixtures.trial(2));
    }
    try (SessionReader reader = SessionReader.open(file())) {
      assertEquals(2, reader.session().trials().size());
    }
  }

  @ParameterizedTest
  @CsvSource({
    "COMPLETE, COMPLETE",
    "STOPPED, STOPPED",
    "FAULTED, FAULTED",
    "SERIES_STARTED, CRASHED",
    "NO_CAPTURE, CRASHED",
    "CAUTIONS_READ, CRASHED"
  })
  void theLastRemarkSaysHowTheRunEnded(Remark.Kind kind, Ending ending) {
    try (SessionLog log = SessionLog.create(file(), SessionFixtures.header())) {
      log.append(SessionFixtures.trial(1));
      log.append(SessionFixtures.remark(kind));
      log.setAside(1, "setting aside is no run", SessionFixtures.at(2));
    }
    try (SessionReader reader = SessionReader.open(file())) {
      assertEquals(ending, reader.session().ending());
    }
  }

  @Test
  void aTrialWithoutAClosingRemarkIsACrash() {
    try (SessionLog log = SessionLog.create(file(), SessionFixtures.header())) {
      log.append(SessionFixtures.remark(Remark.Kind.COMPLETE));
      log.append(SessionFixtures.trial(1));
    }
    try (SessionReader reader = SessionReader.open(file())) {
      assertEquals(Ending.CRASHED, reader.session().ending());
      assertTrue(reader.session().ending().sentence().contains("crashed"));
    }
  }

  @Test
  void aSecondWriterIsRefusedWhileTheFirstGoesOn() {
    try (SessionLog log = SessionLog.create(file(), SessionFixtures.header())) {
      SessionException refused =
          assertThrows(SessionException.class, () -> SessionLog.resume(file()));
      assertEquals(
          "could not go on with the session file "
              + file()
              + ": another program holds it; end that one first, or use another file",
          refused.getMessage());
      log.append(SessionFixtures.trial(1));
    }
    try (SessionLog log = SessionLog.resume(file())) {
      assertEquals(2, log.nextTrialNumber());
    }
  }

  @Test
  void aTrialOutOfTurnIsRefused() {
    try (SessionLog log = SessionLog.create(file(), SessionFixtures.header())) {
      assertThrows(SessionException.class, () -> log.append(SessionFixtures.trial(2)));
      assertThrows(
          SessionException.class, () -> log.setAside(1, "not there", SessionFixtures.NOON));
      log.append(SessionFixtures.trial(1));
      assertThrows(SessionException.class, () -> log.setAside(1, " ", SessionFixtures.NOON));
      log.setAside(1, "once", SessionFixtures.NOON);
      assertThrows(SessionException.class, () -> log.setAside(1, "twice", SessionFixtures.NOON));
    }
  }

  @Test
  void missingFoldersAreMade() {
    Path deep = folder.resolve("one/two/a.mainsgap");
    try (SessionLog log = SessionLog.create(deep, SessionFixtures.header())) {
      assertFalse(log.lastSeal().isEmpty());
    }
    assertTrue(Files.isRegularFile(deep));
  }
}
