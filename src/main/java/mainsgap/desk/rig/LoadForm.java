package mainsgap.desk.rig;

import javafx.collections.ListChangeListener;
import javafx.scene.control.Button;
import javafx.scene.control.TextField;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import mainsgap.desk.manners.GrowingIcon;
import org.kordamp.ikonli.javafx.FontIcon;
import org.kordamp.ikonli.material2.Material2AL;

/** The load, and the other conditions: names and words in pairs. */
final class LoadForm {
  private final RigModel model;
  private final LoadFields fields;
  private final VBox pairs = new VBox();

  LoadForm(RigModel model) {
    this.model = model;
    this.fields = model.fields().load;
    pairs.getStyleClass().add("rig-rows");
  }

  Rows rows() {
    Rows rows = new Rows(model.lockedProperty());
    rows.typed(fields.description, "What hangs on the output", "60 W, resistive");
    rows.note(
        "Without a load the output may not fall when mains goes: connect at least a small resistive"
            + " load.");
    rows.heading("Other conditions, in your own words");
    rows.add(pairs);
    Button more = new Button("Add a condition");
    FontIcon unused = GrowingIcon.beside(more, Material2AL.ADD);
    more.setId("add-condition");
    more.disableProperty().bind(model.lockedProperty());
    more.setOnAction(
        event -> {
          LoadFields.Condition added = fields.add("", "");
          focusOn(added);
        });
    rows.add(more);
    fields.conditions.addListener((ListChangeListener<LoadFields.Condition>) change -> showPairs());
    showPairs();
    return rows;
  }

  private void showPairs() {
    pairs.getChildren().setAll(fields.conditions.stream().map(this::pair).toList());
  }

  private VBox pair(LoadFields.Condition one) {
    TextField name = typed(one.name(), "battery");
    TextField words = typed(one.words(), "full");
    name.getStyleClass().add("rig-condition-name");
    HBox.setHgrow(words, Priority.ALWAYS);
    Button out = new Button();
    FontIcon unused = GrowingIcon.beside(out, Material2AL.DELETE);
    out.setId(Rows.id(one.name()) + "-out");
    out.setAccessibleText("Take this condition out");
    out.disableProperty().bind(model.lockedProperty());
    out.setOnAction(event -> fields.conditions.remove(one));
    HBox line = new HBox(name, words, out);
    line.getStyleClass().add("rig-choices");
    return new VBox(line, Rows.complaint(one.name()), Rows.complaint(one.words()));
  }

  private TextField typed(Field<String> field, String prompt) {
    TextField typed = new TextField();
    typed.setId(Rows.id(field));
    typed.textProperty().bindBidirectional(field.textProperty());
    typed.setPromptText(prompt);
    typed.setAccessibleText(field.name());
    typed.disableProperty().bind(model.lockedProperty());
    return typed;
  }

  private void focusOn(LoadFields.Condition one) {
    if (pairs.lookup("#" + Rows.id(one.name())) instanceof TextField name) {
      name.requestFocus();
    }
  }
}
