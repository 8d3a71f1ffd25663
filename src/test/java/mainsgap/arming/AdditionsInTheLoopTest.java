package mainsgap.arming;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import mainsgap.session.Addition;
import mainsgap.session.Addition.Load;
import mainsgap.session.Addition.Note;
import mainsgap.session.Addition.SetAside;
import mainsgap.session.Ending;
import mainsgap.session.LoadFate;
import mainsgap.session.Remark;
import mainsgap.session.Session;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a person adds while the loop runs. */
class AdditionsInTheLoopTest {
  private static final Addition ASIDE = new SetAside(1, "the load was not connected");

  private final LoopFixture loop;

  AdditionsInTheLoopTest(@TempDir Path folder) {
    this.loop = new LoopFixture(folder);
  }

  private void giveAt(LoopState where, Addition... additions) {
    loop.onEntering =
        state -> {
          if (state == where) {
            loop.onEntering = other -> {};
            for (Addition addition : additions) {
              assertTrue(loop.additions.give(addition));
            }
          }
        };
  }

  @Test
  void whatIsGivenWhileTheUnitSettlesStandsInTheLogBeforeTheNextTrial() {
    Addition note = new Note(null, "warm");
    giveAt(LoopState.RECOVERING, ASIDE, note, new Load(1, LoadFate.RESET));

    LoopEnd end = loop.run(2);

    assertEquals(LoopEnd.Reason.DONE, end.reason(), end.sentence());
    assertEquals(List.of(ASIDE, note, new Load(1, LoadFate.RESET)), loop.added);
    Session session = loop.session();
    assertEquals("the load was not connected", session.trials().get(0).setAsideReason());
    assertEquals(LoadFate.RESET, session.trials().get(0).load());
    assertEquals(2, session.trials().size());
    assertEquals(
        List.of(Remark.Kind.NOTE, Remark.Kind.LOAD_RESET, Remark.Kind.COMPLETE),
        session.remarks().stream().map(Remark::kind).toList());
  }

  @Test
  void whatIsGivenAtTheVeryEndIsStillInTheLog() {
    giveAt(LoopState.LOGGED, ASIDE);

    LoopEnd unused = loop.run(1);

    assertEquals(List.of(ASIDE), loop.added);
    assertEquals(Ending.COMPLETE, loop.session().ending());
    assertFalse(loop.additions.give(ASIDE), "the series takes nothing more");
  }

  @Test
  void whatIsGivenBeforeAStopOrAFaultIsStillInTheLog() {
    loop.bench.failingAt("read");
    giveAt(LoopState.READING, new Note(null, "smoke"));

    LoopEnd end = loop.run(1);

    assertEquals(LoopEnd.Reason.INSTRUMENT, end.reason());
    assertEquals("smoke", loop.session().remarks().get(0).text());
    assertEquals(Ending.FAULTED, loop.session().ending());
  }

  @Test
  void whatDoesNotFitIsToldAndTheSeriesGoesOn() {
    giveAt(LoopState.ARMED, ASIDE, new Note(null, "taken"));

    LoopEnd end = loop.run(1);

    assertEquals(LoopEnd.Reason.DONE, end.reason());
    assertEquals(List.of("there is no trial 1; the session has 0"), loop.notAdded);
    assertEquals(List.of(new Note(null, "taken")), loop.added);
  }

  @Test
  void aLogThatFailsTakesNothingAndSaysSoOfEach() {
    loop.bench.on("read", loop::cutLog);
    giveAt(LoopState.READING, ASIDE, new Note(null, "lost"));

    LoopEnd end = loop.run(1);

    assertEquals(LoopEnd.Reason.SESSION, end.reason());
    assertEquals(List.of(), loop.added);
    assertEquals(2, loop.notAdded.size());
  }
}
