package mainsgap.waiting;

import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * A request to stop, made once and never withdrawn. Any thread may make it (a face, a shutdown
 * hook); the thread that works asks for it between its steps and wakes from its waits.
 */
public final class StopRequest {
  private final CountDownLatch requested = new CountDownLatch(1);

  /** Asks the work to stop. */
  public void request() {
    requested.countDown();
  }

  /** Whether a stop has been asked for. */
  public boolean isRequested() {
    return requested.getCount() == 0;
  }

  /**
   * Returns if no stop has been asked for.
   *
   * @throws StoppedException if one has
   */
  public void throwIfRequested() {
    if (isRequested()) {
      throw new StoppedException();
    }
  }

  /** Waits for the request, at most {@code duration}; an interrupt counts as the request. */
  void await(Duration duration) {
    try {
      boolean unused = requested.await(duration.toNanos(), TimeUnit.NANOSECONDS);
    } catch (InterruptedException e) {
      request();
      Thread.currentThread().interrupt();
    }
  }
}
