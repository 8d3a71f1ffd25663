package mainsgap.desk.trials;

import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Queue;
import java.util.function.Consumer;
import mainsgap.bench.KeptSession;
import mainsgap.desk.manners.DeskTools;
import mainsgap.session.Addition;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What a person adds once the series no longer takes it: one after the other, as a session takes
 * one writer. For the UI thread.
 */
final class LaterAdditions {
  private static final Logger LOG = LoggerFactory.getLogger(LaterAdditions.class);

  private final DeskTools tools;
  private final Consumer<KeptSession> added;
  private final Consumer<String> notAdded;
  private final Queue<Addition> waiting = new ArrayDeque<>();
  private boolean writing;
  private boolean hasWritten;

  /**
   * Nothing waits.
   *
   * @param added hears the session as it is after each
   * @param notAdded hears why one was not taken
   */
  LaterAdditions(DeskTools tools, Consumer<KeptSession> added, Consumer<String> notAdded) {
    this.tools = tools;
    this.added = added;
    this.notAdded = notAdded;
  }

  void add(Addition addition) {
    waiting.add(addition);
  }

  /** Whether something was added since the series ended, under a seal of its own. */
  boolean hasWritten() {
    return hasWritten;
  }

  /** Whether the session is being written to now: no series may go on with it. */
  boolean isWriting() {
    return writing;
  }

  void forget() {
    waiting.clear();
    hasWritten = false;
  }

  /** Writes what waits to the session in {@code file}; null where there is none. */
  void write(@Nullable Path file) {
    Addition next = waiting.peek();
    if (writing || next == null) {
      return;
    }
    Addition unused = waiting.remove();
    if (file == null) {
      notAdded.accept("there is no session that could take it: start a series first");
      write(null);
      return;
    }
    writing = true;
    hasWritten = true;
    tools
        .background()
        .run(
            () -> KeptSession.add(file, next, tools.clock().instant()),
            kept -> {
              writing = false;
              added.accept(kept);
              write(file);
            },
            e -> {
              writing = false;
              notAdded.accept(String.valueOf(e.getMessage()));
              write(file);
            });
  }

  /** Writes what waits on the calling thread: the window closes. */
  void writeNow(Path file) {
    while (!waiting.isEmpty()) {
      Addition next = waiting.remove();
      try {
        KeptSession unused = KeptSession.add(file, next, tools.clock().instant());
      } catch (RuntimeException e) {
        LOG.warn("{} could not be added to {}", next, file, e);
      }
    }
  }
}
