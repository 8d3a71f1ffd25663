package mainsgap.desk.rig;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import javafx.beans.value.ChangeListener;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.BorderPane;
import org.jspecify.annotations.Nullable;

/** Beside the drawing: the settings of one part, or the cautions, or the rig files. */
final class SidePane extends BorderPane {
  /** Above and beneath what is brought into view, in pixels. */
  private static final double ROOM = 24;

  private final PartForms partForms;
  private final Map<Part, Rows> forms = new EnumMap<>(Part.class);
  private final CautionsForm cautions;
  private final FilesForm files;
  private final Label title = Rows.label("", "rig-title");
  private final ScrollPane scroll = new ScrollPane();
  private final ChangeListener<Node> focusMoves = (owner, before, now) -> bringIntoView(now);

  /** {@code cautionsRead} runs once the last caution is ticked. */
  SidePane(RigModel model, Runnable cautionsRead) {
    partForms = new PartForms(model);
    cautions = new CautionsForm(model, cautionsRead);
    files = new FilesForm(model);
    getStyleClass().add("rig-side");
    setId("rig-side");
    title.setId("rig-side-title");
    scroll.setFitToWidth(true);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    scroll.setFocusTraversable(false);
    setTop(title);
    setCenter(scroll);
    sceneProperty()
        .addListener(
            (property, was, is) -> {
              if (was != null) {
                was.focusOwnerProperty().removeListener(focusMoves);
              }
              if (is != null) {
                is.focusOwnerProperty().addListener(focusMoves);
              }
            });
  }

  /** What has the focus is seen. */
  private void bringIntoView(@Nullable Node focused) {
    Node content = scroll.getContent();
    if (focused == null || content == null || !isIn(content, focused)) {
      return;
    }
    double seen = scroll.getViewportBounds().getHeight();
    if (seen <= 0) {
      return; // the window is not laid out yet, and begins at the top
    }
    Bounds at = content.sceneToLocal(focused.localToScene(focused.getLayoutBounds()));
    double hidden = content.getLayoutBounds().getHeight() - seen;
    double top = scroll.getVvalue() * hidden;
    if (hidden > 0 && at.getMinY() < top) {
      scroll.setVvalue(Math.max(0, (at.getMinY() - ROOM) / hidden));
    } else if (hidden > 0 && at.getMaxY() > top + seen) {
      scroll.setVvalue(Math.min(1, (at.getMaxY() + ROOM - seen) / hidden));
    }
  }

  private static boolean isIn(Node outer, Node inner) {
    for (Node node = inner; node != null; node = node.getParent()) {
      if (node == outer) {
        return true;
      }
    }
    return false;
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
