package mainsgap.link;

import java.time.Duration;

/** Waits for a thread, but not for ever; an interrupt of the waiting one is kept for later. */
final class Joined {
  private Joined() {}

  /** Whether the thread has ended within {@code limit}. */
  static boolean within(Thread thread, Duration limit) {
    boolean interrupted = Thread.interrupted();
    try {
      thread.join(Math.max(1, limit.toMillis()));
    } catch (InterruptedException e) {
      interrupted = true;
    } finally {
      if (interrupted) {
        Thread.currentThread().interrupt();
      }
    }
    return !thread.isAlive();
  }
}
