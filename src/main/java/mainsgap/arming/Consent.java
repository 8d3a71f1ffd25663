package mainsgap.arming;

import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import org.jspecify.annotations.Nullable;

/**
 * A person's word that the program may close the mains switch, once. Any thread may give it; it is
 * fresh only where it is given after it was asked for.
 */
public final class Consent {
  private final AtomicBoolean given = new AtomicBoolean();
  private volatile @Nullable String withheld;

  /** Gives the word for the closing that is asked for now. */
  public void give() {
    given.set(true);
  }

  /** There is nobody who could give the word; the first reason stays. */
  public synchronized void withhold(String why) {
    if (withheld == null) {
      withheld = why;
    }
  }

  /** Why nobody can give the word; empty where somebody can. */
  public Optional<String> reasonWithheld() {
    return Optional.ofNullable(withheld);
  }

  /** Forgets a word that was given before it was asked for. */
  void forget() {
    given.set(false);
  }

  /** Whether the word was given since it was last taken; takes it. */
  boolean take() {
    return given.getAndSet(false);
  }
}
