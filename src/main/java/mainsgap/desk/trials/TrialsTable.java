package mainsgap.desk.trials;

import atlantafx.base.theme.Styles;
import java.util.function.Function;
import javafx.application.Platform;
import javafx.beans.InvalidationListener;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.scene.control.Label;
import javafx.scene.control.TableCell;
import javafx.scene.control.TableColumn;
import javafx.scene.control.TableRow;
import javafx.scene.control.TableView;
import javafx.scene.control.Tooltip;
import mainsgap.bench.TrialReport;
import mainsgap.desk.pictures.TrialMark;
import org.jspecify.annotations.Nullable;

/**
 * All trials of the session, refused and set-aside ones too. The newest is chosen as it comes in,
 * unless the user has chosen another.
 */
final class TrialsTable {
  private static final double USUAL_EM_PIXELS = 14;
  private static final double LEAST_PART = 0.9;

  private final TrialBook book;
  private final TableView<TrialReport> node = new TableView<>();
  private @Nullable Integer chosen;
  private @Nullable Integer newestBefore;
  private boolean itemsChange;

  TrialsTable(TrialBook book) {
    this.book = book;
    node.setId("trials-table");
    node.setAccessibleText("The trials of this session");
    node.getStyleClass().add(Styles.DENSE);
    node.setPlaceholder(new Label("No trial yet"));
    node.setColumnResizePolicy(TableView.CONSTRAINED_RESIZE_POLICY_FLEX_LAST_COLUMN);
    add("no.", 3.2, trial -> Integer.toString(trial.number()));
    add("transfer time", 12.4, trial -> TrialWords.transfer(trial.outcome()));
    add("verdict", 8.4, trial -> TrialMark.of(trial).words());
    add("loss at", 5, trial -> TrialWords.angle(trial.outcome()));
    add("load", 7, trial -> trial.load() == null ? TrialWords.NONE : trial.load().words());
    addNotes();
    node.setRowFactory(table -> new Row());
    node.setItems(book.trials());
    node.getSelectionModel()
        .selectedItemProperty()
        .addListener(
            (property, was, is) -> {
              if (is != null && !itemsChange) {
                chosen = is.number();
              }
            });
    book.trials().addListener((InvalidationListener) change -> changed());
    node.heightProperty().addListener((property, was, is) -> Platform.runLater(this::showChosen));
  }

  TableView<TrialReport> node() {
    return node;
  }

  /** The number of the trial that a note or a word about the load is for; null before the first. */
  @Nullable Integer chosen() {
    return chosen;
  }

  /** Chooses trial {@code number} and brings it into view. */
  void choose(int number) {
    chosen = number;
    for (int row = 0; row < book.trials().size(); row++) {
      if (book.trials().get(row).number() == number) {
        node.getSelectionModel().clearAndSelect(row);
        node.scrollTo(row);
      }
    }
  }

  /**
   * A new trial is chosen where the newest was; else the same one stays chosen. The table moves its
   * own selection about while its items change, which is nobody's choice.
   */
  private void changed() {
    Integer newest =
        book.trials().isEmpty() ? null : book.trials().get(book.trials().size() - 1).number();
    if (newest == null || chosen == null || chosen.equals(newestBefore)) {
      chosen = newest;
    }
    newestBefore = newest;
    itemsChange = true;
    Platform.runLater(
        () -> {
          itemsChange = false;
          if (chosen != null) {
            choose(chosen);
          }
        });
  }

  private void showChosen() {
    if (node.getSelectionModel().getSelectedIndex() >= 0) {
      node.scrollTo(node.getSelectionModel().getSelectedIndex());
    }
  }

  private TableColumn<TrialReport, String> add(
      String name, double widthEm, Function<TrialReport, String> words) {
    TableColumn<TrialReport, String> column = new TableColumn<>(name);
    column.setSortable(false);
    column.setReorderable(false);
    column.setCellValueFactory(cell -> new ReadOnlyStringWrapper(words.apply(cell.getValue())));
    column.setPrefWidth(widthEm * USUAL_EM_PIXELS);
    column.setMinWidth(widthEm * USUAL_EM_PIXELS * LEAST_PART);
    node.getColumns().add(column);
    return column;
  }

  private void addNotes() {
    TableColumn<TrialReport, String> notes = add("notes", 6, TrialWords::note);
    notes.setCellFactory(column -> new Whole());
  }

  /** Its text is told whole in a tip, as it is often longer than the column. */
  private static final class Whole extends TableCell<TrialReport, String> {
    @Override
    protected void updateItem(@Nullable String item, boolean empty) {
      super.updateItem(item, empty);
      boolean bare = empty || item == null || item.isEmpty();
      setText(bare ? null : item);
      Tooltip tip = null;
      if (!bare) {
        tip = new Tooltip(item);
        tip.setWrapText(true);
        tip.setMaxWidth(500);
      }
      setTooltip(tip);
    }
  }

  /** A trial that does not count is paler, and says so in its verdict too. */
  private static final class Row extends TableRow<TrialReport> {
    @Override
    protected void updateItem(@Nullable TrialReport item, boolean empty) {
      super.updateItem(item, empty);
      getStyleClass().remove("does-not-count");
      if (!empty && item != null && !item.counts()) {
        getStyleClass().add("does-not-count");
      }
    }
  }
}
