package mainsgap.desk.rig;

import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import org.jspecify.annotations.Nullable;

/**
 * One setting as it is typed, good or bad, and what is wrong with it. For the UI thread.
 *
 * @param <T> what it is once it is read
 */
final class Field<T> {
  private final String key;
  private final String name;
  private final Reading<T> reading;
  private final StringProperty text = new SimpleStringProperty(this, "text", "");
  private final ReadOnlyStringWrapper complaint = new ReadOnlyStringWrapper(this, "complaint", "");
  private final ReadOnlyObjectWrapper<@Nullable T> value =
      new ReadOnlyObjectWrapper<>(this, "value", null);
  private String own = "";
  private String besideOthers = "";

  /**
   * A setting of which nothing is said yet.
   *
   * @param key its name in files
   * @param name its name for people, in the middle of a sentence
   */
  Field(String key, String name, Reading<T> reading) {
    this.key = key;
    this.name = name;
    this.reading = reading;
    text.addListener((property, was, is) -> read());
  }

  String key() {
    return key;
  }

  String name() {
    return name;
  }

  StringProperty textProperty() {
    return text;
  }

  String text() {
    String typed = text.get();
    return typed == null ? "" : typed.strip();
  }

  /** Types {@code words}; nothing where null. */
  void type(@Nullable Object words) {
    text.set(words == null ? "" : words.toString());
  }

  /** What is wrong, in one sentence; empty where nothing is. */
  ReadOnlyStringProperty complaintProperty() {
    return complaint.getReadOnlyProperty();
  }

  String complaint() {
    return complaint.get();
  }

  /** What is typed; null where nothing is, or nothing that can be used. */
  @Nullable T value() {
    return value.get();
  }

  /** The same; it changes only once what is typed has been read. */
  ReadOnlyObjectProperty<@Nullable T> valueProperty() {
    return value.getReadOnlyProperty();
  }

  /** What is typed, or {@code otherwise}. */
  T valueOr(T otherwise) {
    T typed = value.get();
    return typed == null ? otherwise : typed;
  }

  /** What is wrong with it beside the other settings; empty where nothing is. */
  void complainBesideOthers(String sentence) {
    besideOthers = sentence;
    tell();
  }

  private void read() {
    String typed = text();
    own = "";
    @Nullable T found = null;
    if (!typed.isEmpty()) {
      try {
        found = reading.of(typed);
      } catch (Reading.BadTextException e) {
        own = name + " " + e.getMessage();
      }
    }
    value.set(found);
    tell();
  }

  private void tell() {
    complaint.set(own.isEmpty() ? besideOthers : own);
  }
}
