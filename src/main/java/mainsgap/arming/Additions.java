package mainsgap.arming;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import mainsgap.session.Addition;

/**
 * What a person adds to the log while a series runs. Any thread may give it; the thread that owns
 * the log takes it between the steps of the loop and in its waits.
 */
public final class Additions {
  private final Queue<Addition> given = new ArrayDeque<>();
  private boolean closed;

  /** Whether the series takes it; once it has ended, it does not. */
  public synchronized boolean give(Addition addition) {
    return !closed && given.add(addition);
  }

  /** What was given since; takes it. */
  synchronized List<Addition> take() {
    List<Addition> taken = new ArrayList<>(given);
    given.clear();
    return taken;
  }

  /** What was given last; nothing is taken any more. */
  synchronized List<Addition> takeLast() {
    closed = true;
    return take();
  }
}
