package mainsgap.desk.manners;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class BackgroundTest {
  private static final long LIMIT_SECONDS = 10;

  @Test
  void whatWorkGivesComesBackOnTheUiThread() throws InterruptedException {
    BlockingQueue<Runnable> ui = new LinkedBlockingQueue<>();
    List<String> got = new ArrayList<>();
    try (Background background = Background.onItsOwnThreads(ui::add)) {
      background.run(() -> Thread.currentThread().getName(), got::add, e -> got.add("failed"));
      @Nullable Runnable change = ui.poll(LIMIT_SECONDS, TimeUnit.SECONDS);
      assertEquals(List.of(), got);
      if (change != null) {
        change.run();
      }
    }
    assertEquals(List.of("desk-work"), got);
    assertNotEquals("desk-work", Thread.currentThread().getName());
  }

  @Test
  void workThatFailsComesBackAsItsFault() {
    List<String> got = new ArrayList<>();
    Background background = new Background(Runnable::run, Runnable::run);
    background.<String>run(
        () -> {
          throw new IllegalStateException("the disk is full");
        },
        got::add,
        e -> got.add(String.valueOf(e.getMessage())));
    assertEquals(List.of("the disk is full"), got);
  }

  @Test
  void memoryThatRunsOutIsSaidToo() {
    List<String> got = new ArrayList<>();
    Background background = new Background(Runnable::run, Runnable::run);
    background.<String>run(
        () -> {
          throw new OutOfMemoryError("a capture too long");
        },
        got::add,
        e -> got.add(String.valueOf(e.getMessage())));
    assertEquals(List.of("java.lang.OutOfMemoryError: a capture too long"), got);
  }
}
