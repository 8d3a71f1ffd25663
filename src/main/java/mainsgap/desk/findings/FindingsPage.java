package mainsgap.desk.findings;

import java.util.Objects;
import javafx.beans.binding.Bindings;
import javafx.scene.control.Label;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import mainsgap.desk.manners.DeskTools;
import mainsgap.desk.manners.Page;
import org.kordamp.ikonli.Ikon;
import org.kordamp.ikonli.material2.Material2AL;

/** The page on which sessions are compared and made ready to be published. */
public final class FindingsPage implements Page {
  private static final KeyCombination OPEN =
      new KeyCodeCombination(KeyCode.O, KeyCombination.SHORTCUT_DOWN);

  private static final String NOTHING_OPEN =
      """
      No session is open.

      Drop session files here, press Ctrl O to choose some, or type a path at the left.
      A series on the page Trials makes a session.""";

  private final FindingsModel model;
  private final BorderPane root = new BorderPane();
  private final FileDoor door;
  private final ShelfView shelf;
  private final FigureBar bar;

  /** Shows what {@code model} holds. */
  public FindingsPage(DeskTools tools, FindingsModel model) {
    this.model = model;
    this.door = new FileDoor(model);
    this.shelf = new ShelfView(model, door);
    this.bar = new FigureBar(model);
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
    FigureView figure = new FigureView(model.easel());
    Label words = new Label();
    words.setId("figure-words");
    words.setWrapText(true);
    words
        .textProperty()
        .bind(
            Bindings.createStringBinding(
                this::wordsInPlaceOfAFigure,
                model.easel().pictureProperty(),
                model.easel().whyNoneProperty(),
                model.shelf().readingProperty(),
                model.shelf().sessions()));
    words.visibleProperty().bind(words.textProperty().isNotEmpty());
    StackPane place = new StackPane(figure, words);
    place.getStyleClass().add("figure-place");
    place.setMinSize(0, 0);
    VBox.setVgrow(place, Priority.ALWAYS);
    VBox centre = new VBox(bar.node(), place);
    centre.getStyleClass().add("findings-centre");
    return centre;
  }

  private String wordsInPlaceOfAFigure() {
    String why = model.easel().whyNoneProperty().get();
    if (!why.isEmpty()) {
      return why;
    }
    if (model.shelf().readingProperty().get() > 0
        || model.easel().pictureProperty().get() != null) {
      return "";
    }
    if (model.shelf().sessions().isEmpty()) {
      return NOTHING_OPEN;
    }
    return model.easel().order() == null
        ? "No session is shown: tick one at the left, or press space on it."
        : "";
  }

  private void keyed(KeyEvent event) {
    if (OPEN.match(event)) {
      door.choose();
      event.consume();
      return;
    }
    boolean isTyping = event.getTarget() instanceof TextInputControl;
    if (!isTyping && !event.isShortcutDown() && !event.isAltDown()) {
      int number = digit(event.getCode());
      for (FigureKind kind : FigureKind.values()) {
        if (kind.number() == number) {
          model.wish(model.wishesProperty().get().of(kind));
          event.consume();
        }
      }
    }
  }

  private static int digit(KeyCode code) {
    return code.isDigitKey() ? code.getName().charAt(code.getName().length() - 1) - '0' : 0;
  }
}
