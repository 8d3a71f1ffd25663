package mainsgap.desk.findings;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import mainsgap.desk.manners.Background;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The opened sessions, in the order in which they were asked for, and the files that could not be
 * read. For the UI thread.
 */
final class Shelf {
  private static final Logger LOG = LoggerFactory.getLogger(Shelf.class);

  private final Background background;
  private final List<Path> asked = new ArrayList<>();
  private final ObservableList<OpenedSession> sessions = FXCollections.observableArrayList();
  private final ObservableList<RefusedFile> refused = FXCollections.observableArrayList();
  private final ObservableList<OpenedSession> shownSessions =
      FXCollections.unmodifiableObservableList(sessions);
  private final ObservableList<RefusedFile> shownRefused =
      FXCollections.unmodifiableObservableList(refused);
  private final ReadOnlyIntegerWrapper reading = new ReadOnlyIntegerWrapper(0);
  private final ReadOnlyObjectWrapper<@Nullable Path> front = new ReadOnlyObjectWrapper<>();

  Shelf(Background background) {
    this.background = background;
  }

  ObservableList<OpenedSession> sessions() {
    return shownSessions;
  }

  ObservableList<RefusedFile> refused() {
    return shownRefused;
  }

  /** How many are being read. */
  ReadOnlyIntegerProperty readingProperty() {
    return reading.getReadOnlyProperty();
  }

  /** The session that a person looks at; null where there is none. */
  ReadOnlyObjectProperty<@Nullable Path> frontProperty() {
    return front.getReadOnlyProperty();
  }

  /** All that would have to be asked for to be here again. */
  List<Path> asked() {
    return List.copyOf(asked);
  }

  /** Reads a session and brings it to the front; one that is here already is read again. */
  void open(Path file) {
    Path place = file.toAbsolutePath().normalize();
    front.set(place);
    show(place, true);
    read(place);
  }

  /** Reads it without bringing it to the front. */
  void read(Path file) {
    Path place = file.toAbsolutePath().normalize();
    if (!asked.contains(place)) {
      asked.add(place);
    }
    reading.set(reading.get() + 1);
    background.run(
        () -> OpenedSession.read(place),
        this::arrived,
        e -> notRead(new RefusedFile(place, String.valueOf(e.getMessage()))));
  }

  /** Reads again what has been written to since it was read. */
  void refresh() {
    List<OpenedSession> now = List.copyOf(sessions);
    background.run(
        () -> now.stream().filter(OpenedSession::isOutdated).map(OpenedSession::file).toList(),
        outdated -> outdated.forEach(this::read),
        e -> LOG.warn("whether sessions were written to could not be told", e));
  }

  /** Takes it off the page; the file stays as it is. */
  void remove(Path file) {
    asked.remove(file);
    refused.removeIf(one -> one.file().equals(file));
    int place = placeOf(file);
    sessions.removeIf(one -> one.file().equals(file));
    if (file.equals(front.get())) {
      front.set(
          sessions.isEmpty()
              ? null
              : sessions.get(Math.min(Math.max(0, place), sessions.size() - 1)).file());
    }
  }

  /** Whether the figures show it. */
  void show(Path file, boolean shown) {
    int place = placeOf(file);
    if (place >= 0 && sessions.get(place).isShown() != shown) {
      sessions.set(place, sessions.get(place).shown(shown));
    }
  }

  /** Looks at a session that is here. */
  void bringToFront(Path file) {
    if (placeOf(file) >= 0) {
      front.set(file);
    }
  }

  private void arrived(OpenedSession session) {
    reading.set(reading.get() - 1);
    Path file = session.file();
    refused.removeIf(one -> one.file().equals(file));
    int order = asked.indexOf(file);
    if (order < 0) {
      return;
    }
    int place = placeOf(file);
    if (place >= 0) {
      sessions.set(place, session.shown(sessions.get(place).isShown()));
    } else {
      int before = (int) sessions.stream().filter(one -> asked.indexOf(one.file()) < order).count();
      sessions.add(before, session);
    }
    if (front.get() == null) {
      front.set(file);
    }
  }

  /** What could be read before and no longer can is not shown as if it could. */
  private void notRead(RefusedFile file) {
    reading.set(reading.get() - 1);
    if (!asked.contains(file.file())) {
      return;
    }
    refused.removeIf(one -> one.file().equals(file.file()));
    sessions.removeIf(one -> one.file().equals(file.file()));
    refused.add(file);
    if (file.file().equals(front.get())) {
      front.set(sessions.isEmpty() ? null : sessions.get(0).file());
    }
  }

  private int placeOf(Path file) {
    for (int i = 0; i < sessions.size(); i++) {
      if (sessions.get(i).file().equals(file)) {
        return i;
      }
    }
    return -1;
  }
}
