package mainsgap.desk.findings;

import java.util.Comparator;
import java.util.function.Function;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.value.ObservableValue;
import javafx.scene.control.TableCell;
import javafx.scene.control.TableColumn;
import javafx.scene.control.Tooltip;

/** A column of the table of trials. */
final class TrialColumn {
  private TrialColumn() {}

  /** One of words, as wide as {@code letters}, which follow the size of type. */
  static TableColumn<TrialRow, TrialRow> ofWords(
      String heading, int letters, Function<TrialRow, String> words, Comparator<TrialRow> order) {
    TableColumn<TrialRow, TrialRow> column = new TableColumn<>(heading);
    column.setCellValueFactory(row -> new ReadOnlyObjectWrapper<>(row.getValue()));
    column.setCellFactory(unused -> new Words(words));
    column.setComparator(order);
    column.getProperties().put(TrialColumn.class, letters);
    return column;
  }

  /** Makes all columns follow the size of type. */
  static void follow(
      Iterable<? extends TableColumn<TrialRow, ?>> columns, ObservableValue<Number> points) {
    points.addListener((property, was, is) -> widen(columns, is.doubleValue()));
    widen(columns, points.getValue().doubleValue());
  }

  private static void widen(Iterable<? extends TableColumn<TrialRow, ?>> columns, double points) {
    for (TableColumn<TrialRow, ?> column : columns) {
      Object letters = column.getProperties().get(TrialColumn.class);
      double width = points * 0.62 * (letters instanceof Integer number ? number : 10);
      column.setMinWidth(0.75 * width);
      column.setPrefWidth(width);
    }
  }

  /** What is too long for its cell is told on asking. */
  private static final class Words extends TableCell<TrialRow, TrialRow> {
    private final Function<TrialRow, String> words;

    Words(Function<TrialRow, String> words) {
      this.words = words;
    }

    @Override
    protected void updateItem(TrialRow row, boolean empty) {
      super.updateItem(row, empty);
      String text = empty || row == null ? "" : words.apply(row);
      setText(text);
      setTooltip(text.length() > 12 ? new Tooltip(text) : null);
    }
  }
}
