package mainsgap.waiting;

import java.time.Duration;
import java.time.Instant;

/** Time as the house sees it; tests turn their own. Implementations are safe for all threads. */
public interface Clock {

  /** A monotonic time in nanoseconds, meaningful only as a difference. */
  long nanoTime();

  /** The time of day, for the log. */
  Instant instant();

  /**
   * Waits for {@code duration}, or until a stop is requested.
   *
   * @throws StoppedException as soon as {@code stop} is requested
   */
  void pause(Duration duration, StopRequest stop);

  /** The machine's own clock. */
  static Clock system() {
    return SystemClock.INSTANCE;
  }
}
