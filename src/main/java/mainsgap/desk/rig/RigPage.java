package mainsgap.desk.rig;

import java.util.Objects;
import javafx.scene.Node;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.Region;
import mainsgap.desk.manners.DeskTools;
import mainsgap.desk.manners.Page;
import org.jspecify.annotations.Nullable;
import org.kordamp.ikonli.Ikon;
import org.kordamp.ikonli.material2.Material2AL;

/** The page of the rig. */
public final class RigPage implements Page {
  private final RigModel model;
  private final BorderPane node = new BorderPane();
  private final RigDrawing drawing;
  private final SidePane side;
  private final CheckStrip strip;
  private @Nullable Part open;
  private boolean shownBefore;

  /** The page of {@code model}; {@code goToTrials} brings the next to the front. */
  public RigPage(DeskTools tools, RigModel model, Runnable goToTrials) {
    this.model = model;
    this.strip = new CheckStrip(model, goToTrials);
    this.side = new SidePane(model, strip::focus);
    this.drawing =
        new RigDrawing(model, new CautionPlate(model.cautions(), this::openCautions), this::open);
    node.setId("page-rig");
    node.getStyleClass().add("rig-page");
    node.getStylesheets()
        .add(Objects.requireNonNull(RigPage.class.getResource("rig.css")).toExternalForm());
    ScrollPane scroll = new ScrollPane(drawing);
    scroll.setFitToWidth(true);
    scroll.setFitToHeight(true);
    scroll.setFocusTraversable(false);
    scroll.getStyleClass().add("rig-ground");
    node.setTop(
        new RigBar(model, new RigBar.Deeds(model.shelf()::openNew, this::openFiles, this::save)));
    node.setCenter(scroll);
    node.setRight(side);
    node.setBottom(strip);
    model.shelf().questionProperty().addListener((property, was, is) -> hearQuestion(is));
    node.addEventFilter(KeyEvent.KEY_PRESSED, this::pressed);
  }

  @Override
  public String title() {
    return "Rig";
  }

  @Override
  public Ikon icon() {
    return Material2AL.ELECTRICAL_SERVICES;
  }

  @Override
  public Region node() {
    return node;
  }

  @Override
  public void shown() {
    if (!shownBefore) {
      shownBefore = true;
      if (!model.cautions().areRead()) {
        openCautions();
        return;
      }
      open(Part.SCOPE);
    }
    drawing.part(open == null ? Part.SCOPE : open).requestFocus();
  }

  @Override
  public void closing() {
    model.close();
  }

  private void open(Part part) {
    mark(part);
    side.open(part);
  }

  private void openCautions() {
    mark(null);
    side.openCautions();
  }

  private void hearQuestion(String question) {
    if (!question.isEmpty()) {
      mark(null);
      side.openFiles();
    }
  }

  private void openFiles() {
    mark(null);
    side.openFiles();
  }

  private void save() {
    if (!model.save()) {
      openFiles();
    }
  }

  private void mark(@Nullable Part part) {
    open = part;
    for (Part one : Part.values()) {
      drawing.part(one).showOpen(one == part);
    }
  }

  private void pressed(KeyEvent event) {
    if (event.getCode() == KeyCode.F6) {
      model.check();
    } else if (event.getCode() == KeyCode.F7) {
      model.keepLooking();
    } else if (event.getCode() == KeyCode.ESCAPE && isInSide(event)) {
      drawing.part(open == null ? Part.SCOPE : open).requestFocus();
    } else if (isShortcut(event, KeyCode.S)) {
      save();
    } else if (isShortcut(event, KeyCode.O)
        || new KeyCodeCombination(
                KeyCode.S, KeyCombination.SHORTCUT_DOWN, KeyCombination.SHIFT_DOWN)
            .match(event)) {
      openFiles();
    } else if (isShortcut(event, KeyCode.N) && !model.lockedProperty().get()) {
      model.shelf().openNew();
    } else {
      return;
    }
    event.consume();
  }

  private boolean isInSide(KeyEvent event) {
    Node from = event.getTarget() instanceof Node target ? target : null;
    while (from != null && from != side) {
      from = from.getParent();
    }
    return from == side;
  }

  private static boolean isShortcut(KeyEvent event, KeyCode code) {
    return new KeyCodeCombination(code, KeyCombination.SHORTCUT_DOWN).match(event);
  }
}
