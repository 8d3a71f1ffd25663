package mainsgap.arming;

import java.time.Duration;

/**
 * A wait that goes on.
 *
 * @param what what is waited for
 * @param elapsed since the wait began
 * @param limit when it ends at the latest
 * @param canBeCutShort whether the word to proceed ends it
 */
public record Progress(String what, Duration elapsed, Duration limit, boolean canBeCutShort) {

  /** What is left of the wait, never below zero. */
  public Duration left() {
    return elapsed.compareTo(limit) > 0 ? Duration.ZERO : limit.minus(elapsed);
  }
}
