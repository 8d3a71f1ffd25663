package mainsgap.waiting;

import java.time.Duration;

/** The moment at which a wait ends. Immutable; safe for all threads. */
public final class Deadline {
  private final Clock clock;
  private final long endNanoTime;

  private Deadline(Clock clock, long endNanoTime) {
    this.clock = clock;
    this.endNanoTime = endNanoTime;
  }

  /** The moment {@code duration} from now on {@code clock}. */
  public static Deadline after(Duration duration, Clock clock) {
    return new Deadline(clock, clock.nanoTime() + duration.toNanos());
  }

  /** The moment {@code duration} from now, where it comes before this one; else this one. */
  public Deadline sooner(Duration duration) {
    return duration.compareTo(remaining()) < 0 ? after(duration, clock) : this;
  }

  /** What is left until the deadline; zero once it has passed. */
  public Duration remaining() {
    return Duration.ofNanos(Math.max(0, endNanoTime - clock.nanoTime()));
  }

  /** Whether the deadline has passed. */
  public boolean hasPassed() {
    return endNanoTime - clock.nanoTime() <= 0;
  }
}
