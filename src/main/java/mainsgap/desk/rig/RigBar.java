package mainsgap.desk.rig;

import java.nio.file.Path;
import javafx.beans.binding.Bindings;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import mainsgap.desk.manners.GrowingIcon;
import org.kordamp.ikonli.Ikon;
import org.kordamp.ikonli.javafx.FontIcon;
import org.kordamp.ikonli.material2.Material2AL;
import org.kordamp.ikonli.material2.Material2MZ;

/** Over the drawing: which rig it is, and what can be done with its file. */
final class RigBar extends HBox {
  private final RigModel model;

  /** What the buttons do. */
  record Deeds(Runnable openNew, Runnable files, Runnable save) {}

  RigBar(RigModel model, Deeds deeds) {
    this.model = model;
    getStyleClass().add("rig-bar");
    Label name = new Label();
    name.setId("rig-name");
    name.getStyleClass().add("rig-name-of-file");
    name.textProperty()
        .bind(
            Bindings.createStringBinding(
                this::name, model.shelf().fileProperty(), model.shelf().unsavedProperty()));
    Label words = new Label();
    words.setId("rig-bar-words");
    words.getStyleClass().add("rig-note");
    words
        .textProperty()
        .bind(
            Bindings.createStringBinding(
                () -> Rows.capital(model.shelf().wordsProperty().get()),
                model.shelf().wordsProperty()));
    getChildren()
        .addAll(
            name,
            button(
                "rig-new", "New", Material2AL.ADD, "The example again (Ctrl N)", deeds.openNew()),
            button("rig-files", "Open…", Material2AL.FOLDER_OPEN, "Open (Ctrl O)", deeds.files()),
            button("rig-save", "Save", Material2MZ.SAVE, "Save (Ctrl S)", deeds.save()),
            button(
                "rig-save-as",
                "Save as…",
                Material2MZ.SAVE,
                "Save as (Ctrl Shift S)",
                deeds.files()),
            words);
  }

  private Button button(String id, String words, Ikon icon, String tip, Runnable deed) {
    Button button = new Button(words);
    FontIcon unused = GrowingIcon.beside(button, icon);
    button.setMinWidth(USE_PREF_SIZE);
    button.setId(id);
    button.setTooltip(new Tooltip(tip));
    button.setOnAction(event -> deed.run());
    button.disableProperty().bind(model.lockedProperty());
    return button;
  }

  private String name() {
    Path file = model.shelf().fileProperty().get();
    Path last = file == null ? null : file.getFileName();
    return (last == null ? "Rig without a file" : last.toString())
        + (model.shelf().unsavedProperty().get() ? " — not saved" : "");
  }
}
