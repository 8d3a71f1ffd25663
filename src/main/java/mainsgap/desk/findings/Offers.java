package mainsgap.desk.findings;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import mainsgap.bench.DataFolder;
import mainsgap.desk.manners.Background;

/**
 * Sessions that could be opened: those in the folder of the last series and in the user's data
 * folder, and recent ones from elsewhere. For the UI thread.
 */
final class Offers {
  private final Path folder;
  private final OpenMemory memory;
  private final NewestWork work;
  private final ObservableList<Path> files = FXCollections.observableArrayList();
  private final ObservableList<Path> shown = FXCollections.unmodifiableObservableList(files);
  private final ReadOnlyStringWrapper complaint = new ReadOnlyStringWrapper("");

  Offers(Path folder, OpenMemory memory, Background background) {
    this.folder = folder;
    this.memory = memory;
    this.work = new NewestWork(background);
  }

  Path folder() {
    return folder;
  }

  /** Those that are there, the one written last first, without those of {@link #look}. */
  ObservableList<Path> files() {
    return shown;
  }

  /** Why the folder could not be looked at; empty where it could. */
  ReadOnlyStringProperty complaintProperty() {
    return complaint.getReadOnlyProperty();
  }

  /** Looks again; {@code open} are not offered. */
  void look(List<Path> open) {
    List<Path> folders = Stream.concat(memory.folder().stream(), Stream.of(folder)).toList();
    List<Path> recent = memory.recent();
    work.ask(
        () -> found(folders, recent, open),
        found -> {
          files.setAll(found);
          complaint.set("");
        },
        e -> complaint.set(String.valueOf(e.getMessage())));
  }

  private static List<Path> found(List<Path> folders, List<Path> recent, List<Path> open) {
    Set<Path> all = new LinkedHashSet<>();
    for (Path one : folders) {
      for (Path file : DataFolder.sessionsIn(one)) {
        all.add(file.toAbsolutePath().normalize());
      }
    }
    recent.stream().filter(Files::isRegularFile).forEach(all::add);
    open.forEach(all::remove);
    return List.copyOf(all);
  }
}
