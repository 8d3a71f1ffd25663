package mainsgap.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import mainsgap.session.Addition.Load;
import mainsgap.session.Addition.Note;
import mainsgap.session.Addition.SetAside;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class AdditionTest {
  private final Path file;

  AdditionTest(@TempDir Path folder) {
    file = folder.resolve("a.mainsgap");
  }

  /** A series of two trials that ended with {@code end}, and what was added then. */
  private Session with(Remark.Kind end, Addition... additions) {
    try (SessionLog log = SessionLog.create(file, SessionFixtures.header())) {
      log.append(SessionFixtures.trial(1));
      log.append(SessionFixtures.refused(2));
      log.append(SessionFixtures.remark(end));
    }
    try (SessionLog log = SessionLog.resume(file)) {
      for (Addition addition : additions) {
        assertEquals(Optional.empty(), addition.whyNot(log));
        assertEquals(addition.appendTo(log, SessionFixtures.NOON), log.lastSeal());
      }
    }
    try (SessionReader reader = SessionReader.open(file)) {
      return reader.session();
    }
  }

  @Test
  void aTrialCarriesWhatWasAddedAboutIt() {
    Session session =
        with(
            Remark.Kind.COMPLETE,
            new Note(1, "the fan was on"),
            new Load(1, LoadFate.RODE_THROUGH),
            new Note(null, "a warm room"),
            new Load(1, LoadFate.RESET),
            new Note(1, "no, it was off"),
            new SetAside(1, "a second load hung on it"));

    LoggedTrial first = session.trials().get(0);
    assertEquals(List.of("the fan was on", "no, it was off"), first.notes());
    assertEquals(LoadFate.RESET, first.load(), "the last word counts");
    assertEquals("a second load hung on it", first.setAsideReason());
    assertEquals(List.of(), session.trials().get(1).notes());
    assertNull(session.trials().get(1).load());
    assertEquals(
        new Remark(SessionFixtures.NOON, Remark.Kind.NOTE, null, "a warm room"),
        session.remarks().get(3));
    assertEquals(List.of(2), session.standingTrials().stream().map(LoggedTrial::number).toList());
  }

  @ParameterizedTest
  @EnumSource(names = {"COMPLETE", "STOPPED", "FAULTED"})
  void whatIsAddedLaterDoesNotChangeHowTheSeriesEnded(Remark.Kind end) {
    Session session =
        with(end, new Note(1, "a word"), new Note(null, "b"), new Load(1, LoadFate.DAMAGED));

    assertEquals(end.name(), session.ending().name());
  }

  @Test
  void whatDoesNotFitIsToldInOneSentence() {
    try (SessionLog log = SessionLog.create(file, SessionFixtures.header())) {
      log.append(SessionFixtures.trial(1));
      assertEquals("there is no trial 2; the session has 1", whyNot(new Note(2, "a"), log));
      assertEquals(
          "there is no trial 0; the session has 1", whyNot(new Load(0, LoadFate.RESET), log));
      assertEquals("there is no trial 2; the session has 1", whyNot(new SetAside(2, "a"), log));
      assertEquals("trial 1 is set aside only with a reason", whyNot(new SetAside(1, " "), log));
      assertEquals(
          "an empty note says nothing: write a word, or leave it", whyNot(new Note(1, ""), log));
      assertEquals(
          "the text has 2001 characters; allowed: at most 2000: shorten it",
          whyNot(new Note(null, "x".repeat(2001)), log));
      log.setAside(1, "once", SessionFixtures.NOON);
      assertEquals("trial 1 is set aside already", whyNot(new SetAside(1, "twice"), log));
    }
  }

  private static String whyNot(Addition addition, SessionLog log) {
    return addition.whyNot(log).orElseThrow();
  }
}
