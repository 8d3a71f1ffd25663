package mainsgap.desk.rig;

import java.util.Locale;
import java.util.Map;
import javafx.beans.binding.Bindings;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.value.ObservableBooleanValue;
import javafx.scene.Node;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Control;
import javafx.scene.control.Label;
import javafx.scene.control.RadioButton;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;

/** The settings of one part, a row each: its name, what is typed, and what is wrong with it. */
final class Rows extends VBox {
  private final ObservableBooleanValue locked;

  /** No rows yet; nothing can be typed while {@code locked}. */
  Rows(ObservableBooleanValue locked) {
    this.locked = locked;
    getStyleClass().add("rig-rows");
  }

  /** A line over the rows that belong together. */
  Label heading(String words) {
    Label heading = label(words, "rig-heading");
    getChildren().add(heading);
    return heading;
  }

  /** Words about the rows beside them. */
  Label note(String words) {
    Label note = label(words, "rig-note");
    getChildren().add(note);
    return note;
  }

  /** Words that change; not there while they are empty. */
  Label note(ReadOnlyStringProperty words) {
    Label note = note("");
    note.textProperty().bind(words);
    showWhileSaid(note);
    return note;
  }

  /** A setting that is typed. */
  TextField typed(Field<?> field, String name, String prompt) {
    TextField typed = new TextField();
    typed.textProperty().bindBidirectional(field.textProperty());
    typed.setPromptText(prompt);
    row(field, name, typed);
    return typed;
  }

  /** A setting that is chosen from {@code words}, by what is shown for each. */
  ComboBox<String> chosen(Field<?> field, String name, Map<String, String> words) {
    ComboBox<String> chosen = new ComboBox<>();
    chosen.setMaxWidth(Double.MAX_VALUE);
    chosen.getItems().setAll(words.keySet());
    chosen.setConverter(shownAs(words));
    chosen.valueProperty().bindBidirectional(field.textProperty());
    row(field, name, chosen);
    return chosen;
  }

  /** A setting of few choices, all of them seen. */
  void oneOf(Field<?> field, String name, Map<String, String> words) {
    ToggleGroup group = new ToggleGroup();
    HBox buttons = new HBox();
    buttons.getStyleClass().add("rig-choices");
    words.forEach(
        (word, shown) -> {
          RadioButton button = new RadioButton(shown);
          button.setId(id(field) + "-" + word);
          button.setToggleGroup(group);
          button.setSelected(field.text().equals(word));
          button.disableProperty().bind(locked);
          button
              .selectedProperty()
              .addListener(
                  (property, was, is) -> {
                    if (is) {
                      field.type(word);
                    }
                  });
          field
              .textProperty()
              .addListener((property, was, is) -> button.setSelected(word.equals(is)));
          buttons.getChildren().add(button);
        });
    VBox row = new VBox(label(name, "rig-name"), buttons, complaint(field));
    row.getStyleClass().add("rig-row");
    getChildren().add(row);
  }

  /** Anything else. */
  void add(Node node) {
    getChildren().add(node);
  }

  /** What is not there while it says nothing. */
  static void showWhileSaid(Label label) {
    label.visibleProperty().bind(label.textProperty().isNotEmpty());
    label.managedProperty().bind(label.visibleProperty());
  }

  static Label label(String words, String style) {
    Label label = new Label(words);
    label.setWrapText(true);
    label.setMinHeight(USE_PREF_SIZE);
    label.getStyleClass().add(style);
    return label;
  }

  /** What is wrong with a setting, beside it. */
  static Label complaint(Field<?> field) {
    Label complaint = label("", "rig-complaint");
    complaint.setId(id(field) + "-complaint");
    complaint
        .textProperty()
        .bind(
            Bindings.createStringBinding(
                () -> capital(field.complaint()), field.complaintProperty()));
    showWhileSaid(complaint);
    return complaint;
  }

  /** As a sentence begins. */
  static String capital(String words) {
    return words.isEmpty()
        ? words
        : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }

  /** The name of the control of {@code field}. */
  static String id(Field<?> field) {
    return field.key().replace('.', '-');
  }

  private void row(Field<?> field, String name, Control control) {
    control.setId(id(field));
    control.disableProperty().bind(locked);
    Label label = label(name, "rig-name");
    label.setLabelFor(control);
    control.setAccessibleText(name);
    VBox row = new VBox(label, control, complaint(field));
    row.getStyleClass().add("rig-row");
    getChildren().add(row);
  }

  private static StringConverter<String> shownAs(Map<String, String> words) {
    return new StringConverter<>() {
      @Override
      public String toString(String word) {
        return word == null || word.isEmpty() ? "not set" : words.getOrDefault(word, word);
      }

      @Override
      public String fromString(String shown) {
        return words.entrySet().stream()
            .filter(entry -> entry.getValue().equals(shown))
            .map(Map.Entry::getKey)
            .findFirst()
            .orElse("");
      }
    };
  }
}
