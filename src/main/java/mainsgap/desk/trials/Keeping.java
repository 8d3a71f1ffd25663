package mainsgap.desk.trials;

import java.nio.file.Path;
import java.util.function.Consumer;
import mainsgap.bench.KeptSession;
import mainsgap.bench.SeriesEnd;
import mainsgap.desk.manners.DeskTools;
import mainsgap.session.Addition;
import org.jspecify.annotations.Nullable;

/**
 * The session of a series once the series no longer writes it: it is read back, and takes what a
 * person adds. For the UI thread.
 */
final class Keeping {
  private final DeskTools tools;
  private final TrialBook book;
  private final Course course;
  private final LaterAdditions later;

  /**
   * Nothing is kept yet.
   *
   * @param notAdded hears why an addition was not taken
   */
  Keeping(DeskTools tools, TrialBook book, Course course, Consumer<String> notAdded) {
    this.tools = tools;
    this.book = book;
    this.course = course;
    this.later = new LaterAdditions(tools, this::added, notAdded);
  }

  /** The session's file; null before it is open. */
  @Nullable Path file() {
    Evidence kept = book.evidenceProperty().get();
    return kept == null ? null : kept.file();
  }

  /** Whether the session is being written to now: no series may go on with it. */
  boolean isWriting() {
    return later.isWriting();
  }

  /** Another series begins. */
  void forget() {
    later.forget();
  }

  /** Adds it once {@link #write} is called. */
  void add(Addition addition) {
    later.add(addition);
  }

  /** Writes what waits. */
  void write() {
    later.write(file());
  }

  /** Writes what waits on the calling thread: the window closes. */
  void writeNow() {
    Path file = file();
    if (file != null) {
      later.writeNow(file);
    }
  }

  /** The series has ended: what stands on the disk is the evidence, so it is read again. */
  void ended(SeriesEnd ending) {
    Path session = ending.session();
    if (session != null && ending.kind() != SeriesEnd.Kind.SESSION_FAILED) {
      readBack(session, ending.lastSeal());
    }
    write();
  }

  private void readBack(Path session, @Nullable String seal) {
    tools
        .background()
        .run(
            () -> KeptSession.read(session),
            kept -> {
              if (seal != null && !seal.equals(kept.session().lastSeal()) && !later.hasWritten()) {
                course.notSound("its last seal on the disk is another one");
              }
            },
            e -> course.notSound(String.valueOf(e.getMessage())));
  }

  private void added(KeptSession kept) {
    book.kept(kept);
    course.judgedAnew(kept.figures().verdict());
    course.noted("it is in the session, under a new last seal");
  }
}
