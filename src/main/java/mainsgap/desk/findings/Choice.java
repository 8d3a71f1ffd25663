package mainsgap.desk.findings;

import java.util.List;
import java.util.function.Function;
import javafx.beans.property.ObjectProperty;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.util.StringConverter;

/** One of several, with words before it. */
final class Choice<T> {
  private final ComboBox<T> box = new ComboBox<>();
  private final HBox node;

  Choice(String id, String words, List<T> all, Function<T, String> wording) {
    box.setId(id);
    box.setAccessibleText(words);
    box.getItems().setAll(all);
    box.setConverter(
        new StringConverter<>() {
          @Override
          public String toString(T one) {
            return one == null ? "" : wording.apply(one);
          }

          @Override
          public T fromString(String typed) {
            throw new UnsupportedOperationException("nothing is typed here");
          }
        });
    Label label = new Label(words);
    label.setLabelFor(box);
    label.setMinWidth(HBox.USE_PREF_SIZE);
    node = new HBox(label, box);
    node.getStyleClass().add("choice");
  }

  ObjectProperty<T> valueProperty() {
    return box.valueProperty();
  }

  HBox node() {
    return node;
  }

  /** Shown only where it matters. */
  void showIf(boolean matters) {
    node.setVisible(matters);
    node.setManaged(matters);
  }
}
