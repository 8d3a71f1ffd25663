package mainsgap.waiting;

import java.time.Duration;
import java.time.Instant;

/** A clock that stands still until a pause or a test turns it on. */
public final class ManualClock implements Clock {
  private static final Instant START = Instant.parse("2026-01-01T00:00:00Z");
  private long nanos;

  @Override
  public synchronized long nanoTime() {
    return nanos;
  }

  @Override
  public synchronized Instant instant() {
    return START.plusNanos(nanos);
  }

  @Override
  public void pause(Duration duration, StopRequest stop) {
    stop.throwIfRequested();
    advance(duration);
  }

  /** Turns the clock on by {@code duration}. */
  public synchronized void advance(Duration duration) {
    nanos += duration.toNanos();
  }
}
