package mainsgap.desk.findings;

import java.nio.file.Path;
import javafx.beans.binding.Bindings;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** Sessions that lie ready to be opened. */
final class OffersView {
  private final FindingsModel model;
  private final VBox node = new VBox();
  private final ListView<Path> list = new ListView<>();

  OffersView(FindingsModel model) {
    this.model = model;
    node.getStyleClass().add("offers");
    list.setId("offers");
    list.setItems(model.offers().files());
    list.setCellFactory(unused -> new OfferCell());
    list.setOnKeyPressed(
        event -> {
          if (event.getCode() == KeyCode.ENTER) {
            openSelected();
            event.consume();
          }
        });
    list.setOnMouseClicked(
        event -> {
          if (event.getButton() == MouseButton.PRIMARY && event.getClickCount() == 2) {
            openSelected();
          }
        });
    Label complaint = new Label();
    complaint.setId("offers-complaint");
    complaint.setWrapText(true);
    complaint.textProperty().bind(model.offers().complaintProperty());
    complaint.visibleProperty().bind(complaint.textProperty().isNotEmpty());
    complaint.managedProperty().bind(complaint.visibleProperty());
    Label heading = ShelfView.heading("Not open (Enter opens)");
    node.getChildren().addAll(heading, complaint, list);
    node.visibleProperty()
        .bind(Bindings.isNotEmpty(list.getItems()).or(complaint.textProperty().isNotEmpty()));
    node.managedProperty().bind(node.visibleProperty());
  }

  Region node() {
    return node;
  }

  private void openSelected() {
    Path file = list.getSelectionModel().getSelectedItem();
    if (file != null) {
      model.open(file);
    }
  }

  /** The name of a file, the folder on asking. */
  private static final class OfferCell extends ListCell<Path> {
    OfferCell() {
      setPrefWidth(0);
    }

    @Override
    protected void updateItem(Path file, boolean empty) {
      super.updateItem(file, empty);
      setText(empty || file == null ? null : String.valueOf(file.getFileName()));
      setTooltip(empty || file == null ? null : new Tooltip(file.toString()));
    }
  }
}
