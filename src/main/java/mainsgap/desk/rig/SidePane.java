package mainsgap.desk.rig;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.BorderPane;

/** Beside the drawing: the settings of one part, or the cautions, or the rig files. */
final class SidePane extends BorderPane {
  private final PartForms partForms;
  private final Map<Part, Rows> forms = new EnumMap<>(Part.class);
  private final CautionsForm cautions;
  private final FilesForm files;
  private final Label title = Rows.label("", "rig-title");
  private final ScrollPane scroll = new ScrollPane();

  SidePane(RigModel model) {
    partForms = new PartForms(model);
    cautions = new CautionsForm(model);
    files = new FilesForm(model);
    getStyleClass().add("rig-side");
    setId("rig-side");
    title.setId("rig-side-title");
    scroll.setFitToWidth(true);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    scroll.setFocusTraversable(false);
    setTop(title);
    setCenter(scroll);
  }

  /** The settings of {@code part}, with the focus on the first. */
  void open(Part part) {
    show(part.title(), forms.computeIfAbsent(part, partForms::of));
    firstControl(scroll.getContent()).ifPresent(Node::requestFocus);
  }

  /** The cautions, with the focus on the first that is not read. */
  void openCautions() {
    show("Before the first arming", cautions.rows());
    cautions.focusOnNext();
  }

  /** The rig files. */
  void openFiles() {
    show("Rig files", files.rows());
    files.focus();
  }

  private void show(String words, Rows rows) {
    title.setText(words);
    scroll.setContent(rows);
    scroll.setVvalue(0);
    scroll.applyCss();
    scroll.layout();
  }

  private static Optional<Node> firstControl(Node node) {
    if (node.isFocusTraversable() && !node.isDisabled()) {
      return Optional.of(node);
    }
    if (!(node instanceof Parent parent) || !node.isVisible()) {
      return Optional.empty();
    }
    return parent.getChildrenUnmodifiable().stream()
        .flatMap(child -> firstControl(child).stream())
        .findFirst();
  }
}
