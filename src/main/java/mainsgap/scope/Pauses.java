package mainsgap.scope;

import java.time.Duration;
import java.util.function.BooleanSupplier;
import mainsgap.waiting.Clock;
import mainsgap.waiting.Deadline;
import mainsgap.waiting.StopRequest;

/** The driver's waits: each heeds the stop request. */
record Pauses(Clock clock, StopRequest stop) {

  void pause(Duration duration) {
    if (!duration.isZero()) {
      clock.pause(duration, stop);
    }
  }

  /** Asks {@code done} until it says yes or the time is over; gives its last answer. */
  boolean until(Duration atMost, Duration poll, BooleanSupplier done) {
    Deadline deadline = Deadline.after(atMost, clock);
    while (!done.getAsBoolean()) {
      if (deadline.hasPassed()) {
        return false;
      }
      pause(poll);
    }
    return true;
  }
}
