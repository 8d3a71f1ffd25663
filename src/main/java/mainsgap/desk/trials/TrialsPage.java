package mainsgap.desk.trials;

import java.util.Map;
import java.util.Objects;
import javafx.beans.InvalidationListener;
import javafx.geometry.Orientation;
import javafx.scene.control.Label;
import javafx.scene.control.SplitPane;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.scene.shape.Rectangle;
import mainsgap.desk.manners.Page;
import mainsgap.desk.pictures.TracePane;
import mainsgap.desk.pictures.TrialStrip;
import mainsgap.desk.pictures.WavePicture;
import org.jspecify.annotations.Nullable;
import org.kordamp.ikonli.Ikon;
import org.kordamp.ikonli.material2.Material2MZ;

/** The page that is looked at while a series runs. */
public final class TrialsPage implements Page {
  /** Whatever else is held down. */
  private static final KeyCombination EMERGENCY =
      new KeyCodeCombination(
          KeyCode.F12,
          KeyCombination.ModifierValue.ANY,
          KeyCombination.ModifierValue.ANY,
          KeyCombination.ModifierValue.ANY,
          KeyCombination.ModifierValue.ANY,
          KeyCombination.ModifierValue.ANY);

  private static final double PICTURES_PART = 0.58;
  private static final double TRACE_PART = 0.6;

  private static final double LOW_EMS = 54;

  private final TrialsModel model;
  private final Label em = new Label();
  private final BorderPane node = new BorderPane();
  private final TracePane trace = new TracePane();
  private final TrialStrip strip = new TrialStrip();
  private final WavePicture wave = new WavePicture();
  private final TrialsTable table;
  private final EntryBar entry = new EntryBar();
  private final EndBoard end;
  private final Controls controls;

  /** The page of {@code model}. */
  public TrialsPage(TrialsModel model) {
    this.model = model;
    table = new TrialsTable(model.book());
    WaysOn ways = new WaysOn(model, node);
    end = new EndBoard(model, ways);
    Deeds deeds = new Deeds(model, table, entry);
    controls = new Controls(model, deeds, ways);
    node.setId("trials-page");
    node.getStyleClass().add("trials-page");
    node.getStylesheets()
        .add(Objects.requireNonNull(TrialsPage.class.getResource("trials.css")).toExternalForm());
    node.setTop(new SignBoard(model).node());
    node.setCenter(middle());
    em.setManaged(false);
    em.setVisible(false);
    em.fontProperty().addListener((property, was, is) -> fitHeight());
    node.setBottom(new VBox(end.node(), entry.node(), controls.node(), em));
    PageKeys keys = new PageKeys(model, controls, deeds);
    node.addEventHandler(KeyEvent.KEY_PRESSED, keys::pressed);
    node.addEventFilter(KeyEvent.KEY_RELEASED, keys::released);
    node.heightProperty().addListener((property, was, is) -> fitHeight());
    follow();
  }

  /** On a low window the sign gives room to the pictures. */
  private void fitHeight() {
    boolean low = node.getHeight() < LOW_EMS * em.getFont().getSize();
    if (low != node.getStyleClass().contains("low")) {
      if (low) {
        node.getStyleClass().add("low");
      } else {
        node.getStyleClass().remove("low");
      }
    }
  }

  private SplitPane middle() {
    SplitPane pictures = new SplitPane(trace.node(), strip.node());
    pictures.setOrientation(Orientation.VERTICAL);
    pictures.setDividerPositions(TRACE_PART);
    VBox figures = new VBox(new FiguresBoard(model.book()).node(), wave.node(), table.node());
    figures.getStyleClass().add("side");
    VBox.setVgrow(table.node(), Priority.ALWAYS);
    SplitPane middle = new SplitPane(pictures, figures);
    middle.setDividerPositions(PICTURES_PART);
    // Where the window is too small, the pictures give way, never the sign nor the buttons.
    middle.setMinSize(0, 0);
    Rectangle seen = new Rectangle();
    seen.widthProperty().bind(middle.widthProperty());
    seen.heightProperty().bind(middle.heightProperty());
    middle.setClip(seen);
    return middle;
  }

  private void follow() {
    TrialBook book = model.book();
    trace.clear("The trace of the last trial comes here.");
    book.drawnProperty().addListener((property, was, is) -> draw(is));
    InvalidationListener changed = change -> drawSeries();
    book.trials().addListener(changed);
    book.figuresProperty().addListener(changed);
    book.claimProperty().addListener(changed);
    drawSeries();
    strip.chosenProperty().addListener((property, was, is) -> chooseRow(is));
    table
        .node()
        .getSelectionModel()
        .selectedItemProperty()
        .addListener((property, was, is) -> strip.choose(is == null ? null : is.number()));
    InvalidationListener turned = change -> focusWhereWorkGoesOn();
    model.runningProperty().addListener(turned);
    model.waysOn().addListener(turned);
  }

  private void draw(@Nullable DrawnTrial drawn) {
    if (drawn == null) {
      trace.clear("The trace of the last trial comes here.");
    } else {
      trace.show(drawn.scene());
    }
  }

  private void drawSeries() {
    TrialBook book = model.book();
    strip.show(book.trials(), book.claimProperty().get(), book.figuresProperty().get());
    wave.show(book.trials());
  }

  private void chooseRow(@Nullable Integer trial) {
    if (trial != null) {
      table.choose(trial);
    }
  }

  /** Whoever writes a note goes on with it. */
  private void focusWhereWorkGoesOn() {
    if (entry.isOpen()) {
      return;
    }
    if (model.runningProperty().get()) {
      table.node().requestFocus();
    } else if (!model.waysOn().isEmpty()) {
      end.focus();
    } else {
      controls.focusStart();
    }
  }

  @Override
  public Map<KeyCombination, Runnable> keysOfTheWindow() {
    return Map.of(EMERGENCY, model::emergencyOff);
  }

  @Override
  public String title() {
    return "Trials";
  }

  @Override
  public Ikon icon() {
    return Material2MZ.TIMELINE;
  }

  @Override
  public Region node() {
    return node;
  }

  @Override
  public void shown() {
    focusWhereWorkGoesOn();
  }

  @Override
  public void makeSafe() {
    boolean unused = model.makeSafe();
  }

  @Override
  public void closing() {
    model.shutDown();
  }
}
