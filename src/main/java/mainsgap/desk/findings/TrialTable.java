package mainsgap.desk.findings;

import java.nio.file.Path;
import java.util.Comparator;
import java.util.function.Consumer;
import java.util.function.Function;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.collections.ListChangeListener;
import javafx.collections.transformation.SortedList;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.TableCell;
import javafx.scene.control.TableColumn;
import javafx.scene.control.TableRow;
import javafx.scene.control.TableView;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseButton;
import javafx.scene.layout.Region;
import mainsgap.desk.manners.Appearance;
import org.jspecify.annotations.Nullable;

/** The trials of the sessions shown: each can be opened again, and ticked for the traces. */
final class TrialTable {
  private final FindingsModel model;
  private final Consumer<TrialRow> open;
  private final TableView<TrialRow> table = new TableView<>();

  TrialTable(FindingsModel model, Appearance appearance, Consumer<TrialRow> open) {
    this.model = model;
    this.open = open;
    table.setId("trials");
    SortedList<TrialRow> sorted = new SortedList<>(model.rows());
    sorted.comparatorProperty().bind(table.comparatorProperty());
    table.setItems(sorted);
    table.setPlaceholder(new Label("no trial"));
    table.setColumnResizePolicy(TableView.CONSTRAINED_RESIZE_POLICY_ALL_COLUMNS);
    addColumns();
    TrialColumn.follow(table.getColumns(), appearance.typePointsProperty());
    table.setRowFactory(unused -> row());
    table.addEventFilter(KeyEvent.KEY_PRESSED, this::keyed);
    model
        .rows()
        .addListener(
            (ListChangeListener<TrialRow>) change -> look(model.shelf().frontProperty().get()));
    model.shelf().frontProperty().addListener((property, was, is) -> look(is));
    model.traces().chosenProperty().addListener((property, was, is) -> table.refresh());
    look(model.shelf().frontProperty().get());
  }

  Region node() {
    return table;
  }

  void focus() {
    table.requestFocus();
  }

  private void addColumns() {
    table.getColumns().add(ticks());
    table
        .getColumns()
        .add(TrialColumn.ofWords("Unit", 30, TrialRow::unit, Comparator.comparing(TrialRow::unit)));
    table
        .getColumns()
        .add(
            TrialColumn.ofWords(
                "Trial",
                8,
                row -> Integer.toString(row.key().number()),
                Comparator.comparingInt(row -> row.key().number())));
    table
        .getColumns()
        .add(
            TrialColumn.ofWords(
                "Transfer time",
                28,
                row -> row.words().statedTime(),
                Comparator.comparingDouble(TrialRow::millis)));
    table
        .getColumns()
        .add(
            TrialColumn.ofWords(
                "Result",
                15,
                row -> row.words().result(),
                Comparator.comparing(row -> row.words().result())));
    table.getColumns().add(figure("Loss at", 11, "pointOnWaveDeg", row -> row.words().angle()));
    table
        .getColumns()
        .add(figure("Residual", 13, "residualPercent", row -> row.words().residual()));
    table
        .getColumns()
        .add(
            TrialColumn.ofWords(
                "Remark",
                24,
                row -> row.words().remark(),
                Comparator.comparing(row -> row.words().remark())));
  }

  private static TableColumn<TrialRow, TrialRow> figure(
      String heading, int letters, String figure, Function<TrialRow, String> words) {
    return TrialColumn.ofWords(
        heading,
        letters,
        words,
        Comparator.comparingDouble(row -> row.trial().number(figure).orElse(-1)));
  }

  private TableColumn<TrialRow, TrialRow> ticks() {
    TableColumn<TrialRow, TrialRow> ticks =
        TrialColumn.ofWords("Trace", 10, row -> "", Comparator.comparing(this::isChosen));
    ticks.setCellValueFactory(row -> new ReadOnlyObjectWrapper<>(row.getValue()));
    ticks.setCellFactory(unused -> new Tick());
    return ticks;
  }

  private boolean isChosen(TrialRow row) {
    return model.traces().chosenProperty().get().contains(row.key());
  }

  private TableRow<TrialRow> row() {
    TableRow<TrialRow> row = new TableRow<>();
    row.setOnMouseClicked(
        event -> {
          boolean isTwice = event.getButton() == MouseButton.PRIMARY && event.getClickCount() == 2;
          if (isTwice && row.getItem() != null) {
            open.accept(row.getItem());
          }
        });
    return row;
  }

  private void keyed(KeyEvent event) {
    TrialRow row = table.getSelectionModel().getSelectedItem();
    if (row == null) {
      return;
    }
    if (event.getCode() == KeyCode.ENTER) {
      open.accept(row);
      event.consume();
    } else if (event.getCode() == KeyCode.SPACE && row.hasLoss()) {
      model.traces().tick(row.key(), !isChosen(row));
      event.consume();
    }
  }

  private void look(@Nullable Path front) {
    TrialRow selected = table.getSelectionModel().getSelectedItem();
    if (selected != null && selected.key().file().equals(front)) {
      return;
    }
    for (TrialRow row : table.getItems()) {
      if (row.key().file().equals(front)) {
        table.getSelectionModel().select(row);
        table.scrollTo(row);
        return;
      }
    }
  }

  /** Whether the trial's trace is among those laid over each other. */
  private final class Tick extends TableCell<TrialRow, TrialRow> {
    private final CheckBox box = new CheckBox();

    Tick() {
      box.setFocusTraversable(false);
      box.setTooltip(new Tooltip("Among the traces (space)"));
      box.setOnAction(
          event -> {
            if (getItem() != null) {
              model.traces().tick(getItem().key(), box.isSelected());
            }
          });
    }

    @Override
    protected void updateItem(TrialRow row, boolean empty) {
      super.updateItem(row, empty);
      setGraphic(empty || row == null ? null : box);
      if (row != null) {
        box.setSelected(isChosen(row));
        box.setDisable(!row.hasLoss());
      }
    }
  }
}
