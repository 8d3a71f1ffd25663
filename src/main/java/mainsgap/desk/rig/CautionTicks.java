package mainsgap.desk.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;

/**
 * The cautions, and which of them were read. Read once, they hold until the program ends; what was
 * read for the simulated bench does not hold for a real rig. For the UI thread.
 */
final class CautionTicks {
  /** One caution. */
  record Caution(String words, BooleanProperty read) {}

  private final ObservableList<Caution> cautions = FXCollections.observableArrayList();
  private final ObservableList<Caution> shown = FXCollections.unmodifiableObservableList(cautions);
  private final ReadOnlyIntegerWrapper left = new ReadOnlyIntegerWrapper(this, "left");

  /** The cautions that hold for the rig, in the order of the work. */
  ObservableList<Caution> list() {
    return shown;
  }

  /** How many are not read yet. */
  ReadOnlyIntegerProperty leftProperty() {
    return left.getReadOnlyProperty();
  }

  boolean areRead() {
    return left.get() == 0;
  }

  /** Other cautions hold; one that was read stays read. */
  void hold(List<String> words) {
    if (words.equals(cautions.stream().map(Caution::words).toList())) {
      return;
    }
    List<Caution> next = new ArrayList<>();
    for (String one : words) {
      next.add(known(one).orElseGet(() -> unread(one)));
    }
    cautions.setAll(next);
    count();
  }

  /** All have to be read again. */
  void forget() {
    cautions.forEach(caution -> caution.read().set(false));
  }

  private Optional<Caution> known(String words) {
    return cautions.stream().filter(caution -> caution.words().equals(words)).findFirst();
  }

  private Caution unread(String words) {
    Caution caution = new Caution(words, new SimpleBooleanProperty(false));
    caution.read().addListener((property, was, is) -> count());
    return caution;
  }

  private void count() {
    left.set((int) cautions.stream().filter(caution -> !caution.read().get()).count());
  }
}
