package mainsgap.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import mainsgap.arming.ClosedBy;
import mainsgap.arming.MainsSwitch;
import mainsgap.arming.Prompt;
import mainsgap.waiting.StopRequest;
import org.junit.jupiter.api.Test;

class EmergencyOffTest {
  private final StopRequest stop = new StopRequest();
  private final List<String> told = new CopyOnWriteArrayList<>();
  private final CountDownLatch lineIsFree = new CountDownLatch(1);
  private final CountDownLatch opened = new CountDownLatch(1);

  /** The loop may go on to its next move before the thread that opens has begun. */
  @Test
  void closingIsForbiddenWhenTheRequestReturnsThoughTheLineIsBusy() throws InterruptedException {
    EmergencyOff unused = EmergencyOff.watching(mainsOnABusyLine(ClosedBy.PROGRAM), stop);

    stop.request();

    assertEquals(List.of("close no more"), told);
    lineIsFree.countDown();
    assertTrue(opened.await(10, TimeUnit.SECONDS), "mains is opened once the line is free");
  }

  @Test
  void nothingIsToldOnceTheWatchIsOver() {
    EmergencyOff.watching(mainsOnABusyLine(ClosedBy.PROGRAM), stop).close();

    stop.request();

    assertEquals(List.of(), told);
  }

  @Test
  void handIsNotMoved() {
    EmergencyOff unused = EmergencyOff.watching(mainsOnABusyLine(ClosedBy.HAND), stop);

    stop.request();

    assertEquals(List.of(), told);
  }

  private MainsSwitch mainsOnABusyLine(ClosedBy closedBy) {
    return new MainsSwitch() {
      @Override
      public void ask(Prompt prompt, Consumer<Prompt> hand) {
        throw new AssertionError("nobody asks for a planned move");
      }

      @Override
      public ClosedBy closedBy() {
        return closedBy;
      }

      @Override
      public void closeNoMore() {
        told.add("close no more");
      }

      @Override
      public void emergencyOff() {
        awaitTheLine();
        told.add("emergency off");
        opened.countDown();
      }
    };
  }

  private void awaitTheLine() {
    try {
      assertTrue(lineIsFree.await(10, TimeUnit.SECONDS), "the test frees the line");
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
