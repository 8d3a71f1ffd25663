package mainsgap.cli;

import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import mainsgap.waiting.StopRequest;

/**
 * Turns the end of the process (Ctrl-C, a kill, a closed terminal) into a stop request, and holds
 * the process until the work has ended by itself, but not for ever.
 */
final class StopOnExit {
  private final CountDownLatch ended = new CountDownLatch(1);
  private final StopRequest stop;
  private final Terminal terminal;
  private final Duration limit;
  private final Thread hook;

  private StopOnExit(StopRequest stop, Terminal terminal, Duration limit) {
    this.stop = stop;
    this.terminal = terminal;
    this.limit = limit;
    this.hook = new Thread(this::stopAndWait, "stop");
  }

  /** Begins to listen for the end of the process. */
  static StopOnExit install(StopRequest stop, Terminal terminal, Duration limit) {
    StopOnExit stopOnExit = new StopOnExit(stop, terminal, limit);
    Runtime.getRuntime().addShutdownHook(stopOnExit.hook);
    return stopOnExit;
  }

  /** Runs on the hook's thread. */
  void stopAndWait() {
    stop.request();
    try {
      if (!ended.await(limit.toMillis(), TimeUnit.MILLISECONDS)) {
        terminal.complain(
            "the work did not end within "
                + limit.toSeconds()
                + " s of the stop: look at the instrument, it may still be armed, and at the"
                + " mains switch; the unit's output may still be live from its battery");
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** The work has ended: the process may go. */
  void workHasEnded() {
    ended.countDown();
    try {
      Runtime.getRuntime().removeShutdownHook(hook);
    } catch (IllegalStateException alreadyShuttingDown) {
      // The hook is running or has run: it saw the latch.
    }
  }
}
