package mainsgap.desk.rig;

import java.nio.file.Path;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import mainsgap.bench.BenchException;
import mainsgap.bench.RigSheet;
import mainsgap.desk.manners.Background;
import org.jspecify.annotations.Nullable;

/**
 * Keeps what is typed, beside the UI thread: unsaved settings so that they survive the program, and
 * the rig file that a series reads. For the UI thread.
 */
final class RigKeeper {
  /**
   * What there is to keep.
   *
   * @param unsaved null where all is saved
   * @param inUse the rig that a series would run on; null where none could
   */
  record Kept(@Nullable RigSnapshot unsaved, @Nullable RigSheet inUse) {}

  private final Background background;
  private final Draft draft;
  private final Path inUse;
  private final ReadOnlyStringWrapper complaint = new ReadOnlyStringWrapper(this, "complaint", "");
  private @Nullable Kept latest;
  private @Nullable Kept written;
  private boolean writing;
  private int asked;
  private int newestWritten;

  RigKeeper(Background background, Path stateFolder) {
    this.background = background;
    this.draft = new Draft(stateFolder);
    this.inUse = stateFolder.resolve("rig-in-use.toml");
  }

  /** What was left unsaved. */
  Draft draft() {
    return draft;
  }

  /** Why it cannot be kept; empty where it can. */
  ReadOnlyStringProperty complaintProperty() {
    return complaint.getReadOnlyProperty();
  }

  /** Keeps {@code kept}, soon; of several the last. */
  void keep(Kept kept) {
    if (kept.equals(latest)) {
      return;
    }
    latest = kept;
    asked++;
    writeNext();
  }

  /**
   * The rig file of what was last kept.
   *
   * @throws BenchException with a sentence if it cannot be written
   */
  Path fileInUse() {
    writeNow();
    return inUse;
  }

  /** Keeps what is not kept yet, and returns once it is. */
  void writeNow() {
    Kept kept = latest;
    if (kept != null && !kept.equals(written)) {
      write(kept, asked);
      written(kept);
    }
  }

  private void writeNext() {
    Kept kept = latest;
    if (writing || kept == null || kept.equals(written)) {
      return;
    }
    writing = true;
    int number = asked;
    background.run(
        () -> {
          write(kept, number);
          return kept;
        },
        done -> {
          writing = false;
          written(done);
          writeNext();
        },
        failed -> {
          writing = false;
          complaint.set(String.valueOf(failed.getMessage()));
          if (!kept.equals(latest)) {
            writeNext();
          }
        });
  }

  private void written(Kept kept) {
    written = kept;
    complaint.set("");
  }

  /** What comes late does not go over what was asked for after it. */
  private synchronized void write(Kept kept, int number) {
    if (number < newestWritten) {
      return;
    }
    newestWritten = number;
    if (kept.unsaved() == null) {
      draft.forget();
    } else {
      draft.write(kept.unsaved());
    }
    if (kept.inUse() != null) {
      kept.inUse().write(inUse);
    }
  }
}
