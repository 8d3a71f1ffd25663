package mainsgap.waiting;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * A request to stop, made once and never withdrawn. Any thread may make it (a face, a shutdown
 * hook); the thread that works asks for it between its steps and wakes from its waits.
 */
public final class StopRequest {
  private final CountDownLatch requested = new CountDownLatch(1);
  private final List<Runnable> followers = new ArrayList<>();

  /** Asks the work to stop. */
  public void request() {
    List<Runnable> told;
    synchronized (followers) {
      requested.countDown();
      told = List.copyOf(followers);
      followers.clear();
    }
    told.forEach(Runnable::run);
  }

  /**
   * Runs {@code action} once as soon as a stop is asked for, on the thread that asks, or now where
   * one has been. The action returns at once and does not throw.
   */
  public void whenRequested(Runnable action) {
    synchronized (followers) {
      if (!isRequested()) {
        followers.add(action);
        return;
      }
    }
    action.run();
  }

  /** Takes back what {@link #whenRequested} was told. */
  public void forget(Runnable action) {
    synchronized (followers) {
      followers.remove(action);
    }
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
