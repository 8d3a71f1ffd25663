package mainsgap.arming;

import java.time.Duration;
import java.time.Instant;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import mainsgap.waiting.Clock;
import mainsgap.waiting.Deadline;
import mainsgap.waiting.StopRequest;

/**
 * The waits of the loop: each has a limit, tells its progress and heeds the stop request. In those
 * that nobody times there is room for what can be done meanwhile.
 */
final class Waits {
  private final Clock clock;
  private final StopRequest stop;
  private final Proceed proceed;
  private final Duration poll;
  private final Consumer<Progress> face;
  private final Runnable meanwhile;

  Waits(Reins reins, Duration poll, Consumer<Progress> face, Runnable meanwhile) {
    this.clock = reins.clock();
    this.stop = reins.stop();
    this.proceed = reins.proceed();
    this.poll = poll;
    this.face = face;
    this.meanwhile = meanwhile;
  }

  /** The time of day. */
  Instant now() {
    return clock.instant();
  }

  /** Returns if no stop was asked for. */
  void heedStop() {
    stop.throwIfRequested();
  }

  /**
   * Asks {@code done} at once and then at each poll, until it says yes or the limit has passed;
   * gives its last answer.
   */
  boolean until(String what, Duration limit, BooleanSupplier done) {
    return until(what, limit, done, false, meanwhile);
  }

  /** Forgets a word to proceed that was given before there was anything to wait for. */
  void forgetProceed() {
    proceed.forget();
  }

  /** Lets {@code limit} pass, and does nothing else that could lengthen it. */
  void pass(String what, Duration limit) {
    if (!limit.isZero()) {
      boolean unused = until(what, limit, () -> false, false, () -> {});
    }
  }

  /** Lets {@code limit} pass, or less where the word to proceed is given. */
  void rest(String what, Duration limit) {
    if (!limit.isZero()) {
      boolean unused = until(what, limit, proceed::take, true, meanwhile);
    }
  }

  private boolean until(
      String what,
      Duration limit,
      BooleanSupplier done,
      boolean canBeCutShort,
      Runnable meanwhile) {
    Deadline deadline = Deadline.after(limit, clock);
    while (true) {
      heedStop();
      if (done.getAsBoolean()) {
        return true;
      }
      Duration left = deadline.remaining();
      if (left.isZero()) {
        return false;
      }
      meanwhile.run();
      face.accept(new Progress(what, limit.minus(left), limit, canBeCutShort));
      clock.pause(left.compareTo(poll) < 0 ? left : poll, stop);
    }
  }
}
