package mainsgap.arming;

import java.util.concurrent.atomic.AtomicBoolean;

/** The word to go on sooner than the settling time ends. Any thread may give it. */
public final class Proceed {
  private final AtomicBoolean given = new AtomicBoolean();

  /** Gives the word for the wait that runs now. */
  public void give() {
    given.set(true);
  }

  /** Forgets a word that was given before there was anything to wait for. */
  void forget() {
    given.set(false);
  }

  /** Whether the word was given since it was last taken; takes it. */
  boolean take() {
    return given.getAndSet(false);
  }
}
