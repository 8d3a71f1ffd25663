package mainsgap.desk.manners;

import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Work that must not hold up the window. What it gives, or why it failed, comes back on the UI
 * thread. Any thread may call it.
 */
public final class Background implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Background.class);

  /** Two at most: the smallest machine has two processors, and the window needs some of them. */
  private static final int THREADS = 2;

  private final Executor workers;
  private final UiThread ui;

  /** Work on {@code workers}; one that runs at once makes tests plain. */
  public Background(Executor workers, UiThread ui) {
    this.workers = workers;
    this.ui = ui;
  }

  /** Work on threads of its own, which end with the program. */
  public static Background onItsOwnThreads(UiThread ui) {
    return new Background(
        Executors.newFixedThreadPool(
            THREADS,
            work -> {
              Thread thread = new Thread(work, "desk-work");
              thread.setDaemon(true);
              return thread;
            }),
        ui);
  }

  /**
   * Does {@code work}, then hands what it gave to {@code done}, or what it threw to {@code failed}.
   */
  public <T> void run(Supplier<T> work, Consumer<T> done, Consumer<RuntimeException> failed) {
    workers.execute(
        () -> {
          T found;
          try {
            found = work.get();
          } catch (RuntimeException e) {
            LOG.warn("work behind the window failed", e);
            ui.run(() -> failed.accept(e));
            return;
          } catch (Error e) {
            // Memory that runs out on one long capture is no reason to wait for it for ever.
            LOG.error("work behind the window failed", e);
            ui.run(() -> failed.accept(new IllegalStateException(e.toString(), e)));
            return;
          }
          ui.run(() -> done.accept(found));
        });
  }

  /** Takes no more work; what runs goes on to its end. */
  @Override
  public void close() {
    if (workers instanceof ExecutorService service) {
      service.shutdown();
    }
  }
}
