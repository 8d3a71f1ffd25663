package mainsgap.session;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import mainsgap.transfer.outcome.Outcome;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecheckTest {
  private final Path file;

  RecheckTest(@TempDir Path folder) {
    file = folder.resolve("a.mainsgap");
    try (SessionLog log = SessionLog.create(file, SessionFixtures.header())) {
      log.append(SessionFixtures.trial(1));
      log.append(SessionFixtures.refused(2));
      log.append(SessionFixtures.trial(3));
    }
  }

  private Recheck recheck(Outcome... outcomes) {
    Iterator<Outcome> next = List.of(outcomes).iterator();
    try (SessionReader reader = SessionReader.open(file)) {
      return Recheck.of(
          reader,
          (capture, task) -> next.next(),
          (outcome, claim, rule) ->
              outcome.kind() == Outcome.Kind.REFUSED
                  ? Optional.empty()
                  : Optional.of(SessionFixtures.PASSED));
    }
  }

  @Test
  void theSameFiguresAreNoDifference() {
    Recheck recheck =
        recheck(
            SessionFixtures.measured(1),
            SessionFixtures.refused(2).outcome(),
            SessionFixtures.measured(3));
    assertEquals(List.of(), recheck.differences());
  }

  @Test
  void eachFigureThatCameOutOtherwiseIsNamed() {
    Recheck recheck =
        recheck(
            SessionFixtures.measured(1),
            SessionFixtures.refused(2).outcome(),
            SessionFixtures.measured(4));
    assertEquals(
        List.of(new Recheck.Difference(3, "transferTimeMs", 8.0 + 3 / 7.0, 8.0 + 4 / 7.0)),
        recheck.differences());
    assertEquals(
        "trial 3, transferTimeMs: stored 8.428571428571429, now 8.571428571428571",
        recheck.differences().get(0).sentence());
  }

  @Test
  void aRefusalThatIsMeasuredNowIsNamedWithEveryFigure() {
    Recheck recheck =
        recheck(
            SessionFixtures.measured(1), SessionFixtures.measured(2), SessionFixtures.measured(3));
    assertEquals(
        "trial 2, outcome: stored refused, now measured", recheck.differences().get(0).sentence());
    assertEquals(
        "trial 2, event: stored nothing, now loss", recheck.differences().get(2).sentence());
  }

  /** Programs that took no cleanness stored its figures as nothing. */
  @Test
  void figuresThatTheOlderProgramDidNotTakeAreNoDifference() {
    Recheck recheck =
        recheck(
            SessionFixtures.measuredWithCleanness(1),
            SessionFixtures.refused(2).outcome(),
            SessionFixtures.measured(3));
    assertEquals(List.of(), recheck.differences());
  }

  @Test
  void cleannessThatCameOutOtherwiseIsNamed() {
    try (SessionLog log = SessionLog.resume(file)) {
      log.append(SessionFixtures.trialWithCleanness(4));
    }
    Recheck recheck =
        recheck(
            SessionFixtures.measured(1),
            SessionFixtures.refused(2).outcome(),
            SessionFixtures.measured(3),
            SessionFixtures.measured(4));
    assertEquals(
        "trial 4, peakOvershootPercent: stored 12.5, now nothing",
        recheck.differences().get(0).sentence());
  }
}
