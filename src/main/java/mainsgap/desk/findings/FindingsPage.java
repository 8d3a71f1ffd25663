package mainsgap.desk.findings;

import java.util.Objects;
import javafx.beans.binding.Bindings;
import javafx.geometry.Orientation;
import javafx.scene.control.Button;
import javafx.scene.control.SplitPane;
import javafx.scene.control.TextInputControl;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import mainsgap.desk.manners.DeskTools;
import mainsgap.desk.manners.GrowingIcon;
import mainsgap.desk.manners.Page;
import org.kordamp.ikonli.Ikon;
import org.kordamp.ikonli.javafx.FontIcon;
import org.kordamp.ikonli.material2.Material2AL;
import org.kordamp.ikonli.material2.Material2MZ;

/** The page on which sessions are compared and made ready to be published. */
public final class FindingsPage implements Page {
  private static final KeyCombination OPEN =
      new KeyCodeCombination(KeyCode.O, KeyCombination.SHORTCUT_DOWN);
  private static final KeyCombination EXPORT =
      new KeyCodeCombination(KeyCode.E, KeyCombination.SHORTCUT_DOWN);

  /** The figure's share of the height. */
  private static final double FIGURE_SHARE = 0.72;

  private final FindingsModel model;
  private final BorderPane root = new BorderPane();
  private final FileDoor door;
  private final ShelfView shelf;
  private final TrialTable trials;
  private final ExportPanel export;

  /** Shows what {@code model} holds. */
  public FindingsPage(DeskTools tools, FindingsModel model) {
    this.model = model;
    this.door = new FileDoor(model);
    this.shelf = new ShelfView(model, door);
    this.trials = new TrialTable(model, tools.appearance(), model.trial()::open);
    this.export = new ExportPanel(model, this::closeExport);
    root.setId("findings");
    root.getStyleClass().add("findings");
    root.getStylesheets()
        .add(
            Objects.requireNonNull(FindingsPage.class.getResource("findings.css"))
                .toExternalForm());
    root.setLeft(shelf.node());
    root.setCenter(centre());
    door.takeDropped(root);
    root.addEventHandler(KeyEvent.KEY_PRESSED, this::keyed);
  }

  @Override
  public String title() {
    return "Findings";
  }

  @Override
  public Ikon icon() {
    return Material2AL.ASSESSMENT;
  }

  @Override
  public Region node() {
    return root;
  }

  @Override
  public void shown() {
    model.look();
    if (model.shelf().asked().isEmpty()) {
      door.focus();
    } else {
      shelf.focus();
    }
  }

  @Override
  public void closing() {
    // what is open is kept whenever it changes
  }

  private Region centre() {
    Region figure =
        new FigurePlace(model, new TrialView(model.trial(), this::closeTrial).node()).node();
    VBox.setVgrow(figure, Priority.ALWAYS);
    VBox upper = new VBox(bar(), figure);
    upper.getStyleClass().add("upper");
    StackPane lower = new StackPane(trials.node(), export.node());
    lower.getStyleClass().add("lower");
    export.node().setVisible(false);
    trials.node().visibleProperty().bind(export.node().visibleProperty().not());
    SplitPane centre = new SplitPane(upper, lower);
    centre.setOrientation(Orientation.VERTICAL);
    centre.setDividerPositions(FIGURE_SHARE);
    SplitPane.setResizableWithParent(lower, true);
    return centre;
  }

  private Region bar() {
    Region figures = new FigureBar(model).node();
    HBox.setHgrow(figures, Priority.ALWAYS);
    Button write = new Button("Export");
    FontIcon unused = GrowingIcon.beside(write, Material2MZ.SAVE_ALT);
    write.setId("export-open");
    write.setTooltip(new Tooltip("Write the figure to a file (Ctrl E)"));
    write.setMinWidth(Region.USE_PREF_SIZE);
    write.setOnAction(event -> openExport());
    write.disableProperty().bind(Bindings.isNull(model.easel().pictureProperty()));
    HBox bar = new HBox(figures, write);
    bar.getStyleClass().add("bar");
    return bar;
  }

  private void closeTrial() {
    model.trial().close();
    trials.focus();
  }

  private void openExport() {
    if (model.onScreen() != null) {
      export.node().setVisible(true);
      export.shown();
    }
  }

  private void closeExport() {
    export.node().setVisible(false);
    trials.focus();
  }

  private void keyed(KeyEvent event) {
    if (OPEN.match(event)) {
      door.choose();
    } else if (EXPORT.match(event)) {
      openExport();
    } else if (event.getCode() == KeyCode.ESCAPE && export.node().isVisible()) {
      closeExport();
    } else if (event.getCode() == KeyCode.ESCAPE && model.trial().trialProperty().get() != null) {
      closeTrial();
    } else if (!chosenByDigit(event)) {
      return;
    }
    event.consume();
  }

  private boolean chosenByDigit(KeyEvent event) {
    if (event.getTarget() instanceof TextInputControl
        || event.isShortcutDown()
        || event.isAltDown()) {
      return false;
    }
    int number = digit(event.getCode());
    for (FigureKind kind : FigureKind.values()) {
      if (kind.number() == number) {
        model.wish(model.wishesProperty().get().of(kind));
        return true;
      }
    }
    return false;
  }

  private static int digit(KeyCode code) {
    return code.isDigitKey() ? code.getName().charAt(code.getName().length() - 1) - '0' : 0;
  }
}
