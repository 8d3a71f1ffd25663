package mainsgap.waiting;

import java.time.Duration;
import java.time.Instant;

enum SystemClock implements Clock {
  INSTANCE;

  @Override
  public long nanoTime() {
    return System.nanoTime();
  }

  @Override
  public Instant instant() {
    return Instant.now();
  }

  @Override
  public void pause(Duration duration, StopRequest stop) {
    stop.await(duration);
    stop.throwIfRequested();
  }
}
