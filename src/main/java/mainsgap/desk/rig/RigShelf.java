package mainsgap.desk.rig;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import mainsgap.bench.RigSheet;
import mainsgap.desk.manners.DeskMemory;
import mainsgap.desk.manners.DeskTools;
import mainsgap.settings.SettingsException;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The rig files: the one that is open, and those that were. For the UI thread. */
final class RigShelf {
  private static final Logger LOG = LoggerFactory.getLogger(RigShelf.class);
  private static final String FILE = "rig.file";
  private static final String RECENT = "rig.recent";
  private static final int MOST_RECENT = 8;

  private final RigFields fields;
  private final DeskTools tools;
  private final ReadOnlyObjectWrapper<@Nullable Path> file =
      new ReadOnlyObjectWrapper<>(this, "file", null);
  private final ReadOnlyBooleanWrapper unsaved = new ReadOnlyBooleanWrapper(this, "unsaved");
  private final ReadOnlyStringWrapper words = new ReadOnlyStringWrapper(this, "words", "");
  private final ReadOnlyBooleanWrapper failed = new ReadOnlyBooleanWrapper(this, "failed");
  private final ObservableList<Path> recent = FXCollections.observableArrayList();
  private final ObservableList<Path> shownRecent = FXCollections.unmodifiableObservableList(recent);
  private final ReadOnlyStringWrapper question = new ReadOnlyStringWrapper(this, "question", "");
  private Runnable asked = () -> {};
  private RigSnapshot saved;

  RigShelf(RigFields fields, DeskTools tools) {
    this.fields = fields;
    this.tools = tools;
    fields.show(ExampleRig.sheet());
    saved = RigSnapshot.of(fields);
    tools.memory().text(RECENT).ifPresent(paths -> paths.lines().forEach(this::knowAgain));
  }

  /** The open file; null where the rig has none yet. */
  ReadOnlyObjectProperty<@Nullable Path> fileProperty() {
    return file.getReadOnlyProperty();
  }

  /** Whether something is typed that no file holds. */
  ReadOnlyBooleanProperty unsavedProperty() {
    return unsaved.getReadOnlyProperty();
  }

  /** What became of the last deed with a file, in a sentence. */
  ReadOnlyStringProperty wordsProperty() {
    return words.getReadOnlyProperty();
  }

  /** Whether it failed. */
  ReadOnlyBooleanProperty failedProperty() {
    return failed.getReadOnlyProperty();
  }

  /** The files that were open, the last first. */
  ObservableList<Path> recent() {
    return shownRecent;
  }

  /** Finds the rig as it was left, unsaved settings too. */
  void reopen(Draft draft) {
    tools.memory().text(FILE).ifPresent(this::reopenFile);
    draft.read().ifPresent(left -> left.typeInto(fields));
    fieldsChanged();
  }

  private void knowAgain(String path) {
    try {
      recent.add(Path.of(path));
    } catch (InvalidPathException e) {
      LOG.debug("'{}' is no path here any more", path, e);
    }
  }

  private void reopenFile(String path) {
    try {
      Path left = Path.of(path);
      opened(left, RigSheet.read(left));
      say("", false);
    } catch (SettingsException | InvalidPathException e) {
      say(unreadable(e) + "; the example stands here instead", true);
    }
  }

  /** What would be lost by what was asked for; empty where nothing is asked. */
  ReadOnlyStringProperty questionProperty() {
    return question.getReadOnlyProperty();
  }

  /** Goes on with what was asked for, without what is unsaved, or stays. */
  void answer(boolean goOn) {
    Runnable deed = asked;
    asked = () -> {};
    question.set("");
    if (goOn) {
      deed.run();
    }
  }

  /** The example again, with no file. */
  void openNew() {
    askBefore(
        () -> {
          opened(null, ExampleRig.sheet());
          say("a new rig: the simulated bench", false);
        });
  }

  /** Opens {@code chosen}; where it cannot be read, all stays as it is. */
  void open(Path chosen) {
    askBefore(() -> read(chosen));
  }

  private void askBefore(Runnable deed) {
    if (unsaved.get()) {
      asked = deed;
      question.set(
          "This rig has changes that no file holds. Save it first, or they are lost with the next.");
    } else {
      deed.run();
    }
  }

  private void read(Path chosen) {
    tools
        .background()
        .run(
            () -> RigSheet.read(chosen),
            sheet -> {
              opened(chosen, sheet);
              say("opened " + chosen, false);
            },
            why -> say(unreadable(why) + "; the rig before it is still here", true));
  }

  /** Writes the rig to {@code chosen}, which is open from then on. */
  void save(Path chosen) {
    RigSnapshot written = RigSnapshot.of(fields);
    RigSheet sheet = fields.sheet();
    tools
        .background()
        .run(
            () -> {
              sheet.write(chosen);
              return chosen;
            },
            path -> {
              saved = written;
              remember(path);
              fieldsChanged();
              answer(false);
              say("saved to " + path, false);
            },
            why -> say("not saved: " + why.getMessage(), true));
  }

  /** Sees whether something is unsaved. */
  void fieldsChanged() {
    unsaved.set(!RigSnapshot.of(fields).equals(saved));
  }

  /** Says why a deed cannot be done. */
  void refuse(String why) {
    say(why, true);
  }

  private void opened(@Nullable Path path, RigSheet sheet) {
    fields.show(sheet);
    saved = RigSnapshot.of(fields);
    remember(path);
    fieldsChanged();
  }

  private void remember(@Nullable Path path) {
    file.set(path);
    DeskMemory memory = tools.memory();
    memory.keep(FILE, path == null ? "" : path.toAbsolutePath().toString());
    if (path != null) {
      List<Path> next = new ArrayList<>(recent);
      next.remove(path.toAbsolutePath());
      next.add(0, path.toAbsolutePath());
      recent.setAll(next.subList(0, Math.min(MOST_RECENT, next.size())));
      memory.keep(RECENT, String.join("\n", recent.stream().map(Path::toString).toList()));
    }
    tools.background().run(() -> saved(memory), done -> {}, why -> {});
  }

  private static boolean saved(DeskMemory memory) {
    memory.save();
    return true;
  }

  private void say(String sentence, boolean isFailure) {
    words.set(sentence);
    failed.set(isFailure);
  }

  private static String unreadable(RuntimeException why) {
    return "the rig cannot be read: " + why.getMessage();
  }
}
