package mainsgap.desk.findings;

import java.util.function.Consumer;
import java.util.function.Supplier;
import mainsgap.desk.manners.Background;
import org.jspecify.annotations.Nullable;

/**
 * Work beside the window of which only the newest matters: one runs at a time, and what is asked
 * while it runs replaces what waits. For the UI thread.
 */
final class NewestWork {
  private final Background background;
  private boolean running;
  private @Nullable Runnable waiting;

  NewestWork(Background background) {
    this.background = background;
  }

  /** Does {@code work} soon, unless something newer is asked before it begins. */
  <T> void ask(Supplier<T> work, Consumer<T> done, Consumer<RuntimeException> failed) {
    Runnable start =
        () ->
            background.run(
                work,
                found -> {
                  try {
                    done.accept(found);
                  } finally {
                    goOn();
                  }
                },
                e -> {
                  try {
                    failed.accept(e);
                  } finally {
                    goOn();
                  }
                });
    if (running) {
      waiting = start;
      return;
    }
    running = true;
    start.run();
  }

  /** Whether nothing runs or waits. */
  boolean isDone() {
    return !running;
  }

  private void goOn() {
    Runnable next = waiting;
    waiting = null;
    running = next != null;
    if (next != null) {
      next.run();
    }
  }
}
