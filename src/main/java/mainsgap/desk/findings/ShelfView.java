package mainsgap.desk.findings;

import java.nio.file.Path;
import javafx.collections.ListChangeListener;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import mainsgap.desk.manners.GrowingIcon;
import org.kordamp.ikonli.Ikon;
import org.kordamp.ikonli.javafx.FontIcon;
import org.kordamp.ikonli.material2.Material2AL;
import org.kordamp.ikonli.material2.Material2MZ;

/** The sessions that are open, the files that could not be read, and ways to open more. */
final class ShelfView {
  private final FindingsModel model;
  private final VBox node = new VBox();
  private final ListView<OpenedSession> list = new ListView<>();
  private final VBox refused = new VBox();

  ShelfView(FindingsModel model, FileDoor door) {
    this.model = model;
    node.getStyleClass().add("shelf");
    Label reading = new Label();
    reading.setId("reading");
    model
        .shelf()
        .readingProperty()
        .addListener(
            (property, was, is) ->
                reading.setText(is.intValue() == 0 ? "" : "reading " + is + " …"));
    Region space = new Region();
    HBox.setHgrow(space, Priority.ALWAYS);
    HBox head = new HBox(heading("Sessions"), space, reading);
    head.getStyleClass().add("shelf-head");
    refused.getStyleClass().add("refused-files");
    VBox.setVgrow(list, Priority.ALWAYS);
    node.getChildren().addAll(head, list, refused, door.node(), new OffersView(model).node());
    prepareList();
    model.shelf().refused().addListener((ListChangeListener<RefusedFile>) change -> showRefused());
  }

  Region node() {
    return node;
  }

  void focus() {
    list.requestFocus();
  }

  static Label heading(String words) {
    Label heading = new Label(words);
    heading.getStyleClass().add("heading");
    return heading;
  }

  private void prepareList() {
    list.setId("sessions");
    list.setItems(model.shelf().sessions());
    list.setCellFactory(unused -> new SessionCell(model.shelf()));
    list.setPlaceholder(new Label("none open"));
    list.getSelectionModel()
        .selectedItemProperty()
        .addListener(
            (property, was, is) -> {
              if (is != null) {
                model.shelf().bringToFront(is.file());
              }
            });
    model.shelf().frontProperty().addListener((property, was, is) -> selectFront());
    model
        .shelf()
        .sessions()
        .addListener((ListChangeListener<OpenedSession>) change -> selectFront());
    list.addEventHandler(KeyEvent.KEY_PRESSED, this::keyed);
  }

  private void selectFront() {
    Path front = model.shelf().frontProperty().get();
    for (int i = 0; i < list.getItems().size(); i++) {
      if (list.getItems().get(i).file().equals(front)
          && list.getSelectionModel().getSelectedIndex() != i) {
        list.getSelectionModel().clearAndSelect(i);
        list.scrollTo(i);
      }
    }
  }

  private void keyed(KeyEvent event) {
    OpenedSession session = list.getSelectionModel().getSelectedItem();
    if (session == null) {
      return;
    }
    if (event.getCode() == KeyCode.SPACE) {
      model.shelf().show(session.file(), !session.isShown());
      event.consume();
    } else if (event.getCode() == KeyCode.DELETE || event.getCode() == KeyCode.BACK_SPACE) {
      model.remove(session.file());
      event.consume();
    }
  }

  private void showRefused() {
    refused.getChildren().setAll(model.shelf().refused().stream().map(this::refusal).toList());
  }

  private Region refusal(RefusedFile file) {
    Label why = new Label(file.why());
    why.setWrapText(true);
    FontIcon unused = GrowingIcon.beside(why, Material2MZ.REPORT_PROBLEM);
    why.setMinHeight(Region.USE_PREF_SIZE);
    HBox ways =
        new HBox(
            way("read-again", "Read again", Material2MZ.REFRESH, () -> model.open(file.file())),
            way("leave-out", "Leave out", Material2AL.CLOSE, () -> model.remove(file.file())));
    ways.getStyleClass().add("ways");
    VBox box = new VBox(why, ways);
    box.getStyleClass().add("refused-file");
    return box;
  }

  private static Button way(String id, String words, Ikon icon, Runnable deed) {
    Button way = new Button(words);
    FontIcon unused = GrowingIcon.beside(way, icon);
    way.setId(id);
    way.setTooltip(new Tooltip(words));
    way.setOnAction(event -> deed.run());
    return way;
  }
}
