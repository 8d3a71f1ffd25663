package mainsgap.desk.trials;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import mainsgap.bench.DataFolder;
import mainsgap.bench.SeriesRequest;
import mainsgap.bench.SessionPlace;
import mainsgap.desk.manners.DeskMemory;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Where new sessions are made: the user's data folder, until another is chosen. */
final class SessionFolder {
  private static final Logger LOG = LoggerFactory.getLogger(SessionFolder.class);

  private final DeskMemory memory;
  private final ReadOnlyObjectWrapper<Path> folder;
  private boolean isChosen;

  /** As it was left. */
  SessionFolder(DeskMemory memory) {
    this.memory = memory;
    this.folder = new ReadOnlyObjectWrapper<>(DataFolder.ofUser());
    memory.text(DeskMemory.SESSIONS_FOLDER).ifPresent(this::recall);
  }

  private void recall(String kept) {
    try {
      folder.set(Path.of(kept));
      isChosen = true;
    } catch (InvalidPathException e) {
      LOG.warn("the folder of the sessions was kept as '{}', which is no path", kept, e);
    }
  }

  ReadOnlyObjectProperty<Path> property() {
    return folder.getReadOnlyProperty();
  }

  /** Makes new sessions in {@code chosen}, next time too. */
  void choose(Path chosen) {
    isChosen = true;
    folder.set(chosen);
    memory.keep(DeskMemory.SESSIONS_FOLDER, chosen.toString());
  }

  /** The same series in a new session here; where none was chosen, as it says itself. */
  SeriesRequest placed(SeriesRequest request) {
    return isChosen
        ? request.loggedTo(SessionPlace.newIn(folder.get()), request.trials())
        : request;
  }
}
