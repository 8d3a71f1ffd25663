package mainsgap.arming;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.concurrent.CountDownLatch;
import mainsgap.signal.Event;
import mainsgap.waiting.ManualClock;
import mainsgap.waiting.StoppedException;
import org.junit.jupiter.api.Test;

class CommandedSwitchTest {
  private final FakeLine line = new FakeLine(new BenchFake());
  private final CommandedSwitch mains =
      new CommandedSwitch(line, ClosedBy.PROGRAM, "red button", new ManualClock());

  private void ask(SwitchMove move) {
    mains.ask(new Prompt(move, move.verb()), prompt -> {});
  }

  @Test
  void emergencyOffIsForGood() {
    ask(SwitchMove.CLOSE);
    mains.emergencyOff();

    assertThrows(StoppedException.class, () -> ask(SwitchMove.CLOSE));
    assertEquals(List.of("close", "open"), line.told);
  }

  /** The thread that asked for a stop has not yet begun to open it. */
  @Test
  void closingThatComesAfterItIsForbiddenIsGivenUpUntold() {
    ask(SwitchMove.CLOSE);
    mains.closeNoMore();

    assertThrows(StoppedException.class, () -> ask(SwitchMove.CLOSE));
    assertEquals(List.of("close"), line.told, "and nothing is opened by it alone");
  }

  @Test
  void emergencyOffTellsEvenASwitchThatIsThoughtOpen() {
    ask(SwitchMove.OPEN);
    mains.emergencyOff();
    mains.leaveOff();

    assertEquals(List.of("open", "open"), line.told, "and the end has nothing left to do");
  }

  /** A stop may be asked for at the very end: what would be done then is in no session. */
  @Test
  void switchThatWasLeftOffIsToldNothingMore() {
    ask(SwitchMove.CLOSE);
    mains.leaveOff();
    mains.emergencyOff();

    assertEquals(List.of("close", "open"), line.told);
  }

  @Test
  void openingThatFailsIsTriedOnceMoreAndThenSaidLoudly() {
    line.failures = 2;

    MainsSwitchException loud = assertThrows(MainsSwitchException.class, mains::emergencyOff);

    assertEquals(
        "THE MAINS SWITCH COULD NOT BE OPENED, mains may still be on: open it by hand now, or use"
            + " the emergency stop (red button); the fake switch failed: its link is dead",
        loud.getMessage());
    assertEquals(
        List.of(
            "the fake switch was told to open (emergency off): it failed: its link is dead",
            "the fake switch was told to open (emergency off, once more): it failed: its link is"
                + " dead"),
        mains.takeDeeds().stream().map(SwitchDeed::sentence).toList());
    assertEquals(List.of(), mains.takeDeeds());
  }

  /** The owner's thread is in the middle of an exchange when another one presses emergency off. */
  @Test
  void emergencyOffFromAnotherThreadFollowsTheExchangeUnderWay() throws InterruptedException {
    CountDownLatch opening = new CountDownLatch(1);
    Thread[] presser = new Thread[1];
    line.onOpening =
        () -> {
          line.onOpening = () -> {};
          presser[0] = new Thread(mains::emergencyOff, "presser");
          presser[0].start();
          opening.countDown();
        };

    ask(SwitchMove.OPEN);
    opening.await();
    presser[0].join();

    assertEquals(List.of("open", "open"), line.told);
    assertThrows(StoppedException.class, () -> ask(SwitchMove.CLOSE));
  }

  @Test
  void promptsNameWhatTheHandDoes() {
    assertEquals("open the mains switch now", Prompt.forEvent(Event.LOSS).sentence());
    assertEquals(
        "close the mains switch now; the unit may take up to 5 minutes to go back to mains",
        Prompt.forEvent(Event.RESTORATION).sentence());
  }
}
