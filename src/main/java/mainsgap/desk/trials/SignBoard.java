package mainsgap.desk.trials;

import java.util.Locale;
import javafx.beans.binding.Bindings;
import javafx.geometry.Pos;
import javafx.scene.AccessibleRole;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import mainsgap.arming.Progress;
import mainsgap.bench.TrialReport;
import mainsgap.desk.manners.GrowingIcon;
import mainsgap.desk.pictures.TrialMark;
import org.jspecify.annotations.Nullable;
import org.kordamp.ikonli.javafx.FontIcon;

/**
 * The sign over the pictures, to be read at three metres: what the bench is at, by shape, word and
 * colour, what to do now, and how far the series and the wait have come.
 */
final class SignBoard {
  /** A longer sentence would not fit on one line in the larger type. */
  private static final int LONGEST_IN_LARGE_TYPE = 46;

  private static final int LONGEST_IN_SMALLER_TYPE = 150;
  private static final double SHAPE_TO_WORDS = 1.4;

  private final HBox node = new HBox();
  private final FontIcon shape = new FontIcon();
  private final Label words = new Label();
  private final Label toDo = new Label();

  SignBoard(TrialsModel model) {
    node.setId("sign");
    node.getStyleClass().add("sign");
    node.setAlignment(Pos.CENTER_LEFT);
    node.setAccessibleRole(AccessibleRole.TEXT);
    shape.getStyleClass().add("sign-shape");
    GrowingIcon.follow(shape, words, SHAPE_TO_WORDS);
    words.setId("sign-words");
    words.getStyleClass().add("sign-words");
    words.setMinWidth(Region.USE_PREF_SIZE);
    toDo.setId("sign-to-do");
    toDo.getStyleClass().add("sign-to-do");
    toDo.setWrapText(true);
    VBox said = new VBox(words, toDo);
    said.setAlignment(Pos.CENTER_LEFT);
    said.setMinWidth(0);
    HBox.setHgrow(said, Priority.ALWAYS);
    node.getChildren().addAll(shape, said, count(model));
    model.course().signProperty().addListener((property, was, is) -> show(is));
    show(model.course().signProperty().get());
  }

  Region node() {
    return node;
  }

  private void show(Sign sign) {
    shape.setIconCode(SignShape.of(sign.kind()));
    words.setText(sign.kind().words());
    toDo.setText(sign.toDo());
    toDo.getStyleClass().removeAll("long", "longest");
    node.getStyleClass().remove("much-said");
    if (sign.toDo().length() > LONGEST_IN_SMALLER_TYPE) {
      toDo.getStyleClass().add("longest");
      node.getStyleClass().add("much-said");
    } else if (sign.toDo().length() > LONGEST_IN_LARGE_TYPE) {
      toDo.getStyleClass().add("long");
    }
    toDo.setTooltip(new Tooltip(sign.toDo()));
    node.getStyleClass().removeIf(style -> style.startsWith("tone-"));
    node.getStyleClass().add("tone-" + sign.kind().tone().name().toLowerCase(Locale.ROOT));
    node.setAccessibleText(sign.kind().words() + ". " + sign.toDo());
  }

  private static Region count(TrialsModel model) {
    Label counted = new Label();
    counted.setId("sign-count");
    counted.getStyleClass().add("sign-count");
    counted.setMinWidth(Region.USE_PREF_SIZE);
    counted
        .textProperty()
        .bind(
            Bindings.createStringBinding(
                () -> counted(model),
                model.book().figuresProperty(),
                model.book().wantedProperty()));
    Label last = new Label();
    last.setId("sign-last");
    last.getStyleClass().add("sign-last");
    last.setMinWidth(Region.USE_PREF_SIZE);
    last.textProperty()
        .bind(
            Bindings.createStringBinding(
                () -> last(model.book().lastProperty().get()), model.book().lastProperty()));
    Label waited = new Label();
    waited.setId("sign-wait");
    waited.getStyleClass().add("sign-wait");
    ProgressBar bar = new ProgressBar();
    bar.getStyleClass().add("sign-bar");
    VBox column = new VBox(counted, last, waited, bar);
    column.getStyleClass().add("sign-column");
    column.setAlignment(Pos.CENTER_RIGHT);
    column.setMinWidth(Region.USE_PREF_SIZE);
    model.course().waitProperty().addListener((property, was, is) -> show(is, waited, bar));
    show(null, waited, bar);
    return column;
  }

  private static String counted(TrialsModel model) {
    int wanted = model.book().wantedProperty().get();
    return wanted == 0
        ? ""
        : model.book().figuresProperty().get().measured() + " of " + wanted + " measured";
  }

  /** The newest trial stays in sight while the sign says what comes next. */
  private static String last(@Nullable TrialReport trial) {
    return trial == null
        ? ""
        : "trial "
            + trial.number()
            + ": "
            + TrialWords.transfer(trial.outcome())
            + "  "
            + TrialMark.of(trial).words();
  }

  private static void show(@Nullable Progress wait, Label waited, ProgressBar bar) {
    waited.setVisible(wait != null);
    bar.setVisible(wait != null);
    if (wait != null) {
      waited.setText(wait.what() + ", " + (wait.left().toMillis() + 999) / 1000 + " s left");
      bar.setProgress(
          wait.limit().isZero()
              ? 1
              : (double) wait.elapsed().toMillis() / Math.max(1, wait.limit().toMillis()));
    }
  }
}
