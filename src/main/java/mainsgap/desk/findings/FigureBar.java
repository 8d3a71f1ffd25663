package mainsgap.desk.findings;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Function;
import javafx.scene.Node;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.util.StringConverter;
import mainsgap.report.CleanMeasure;
import mainsgap.report.RankBy;

/** Chooses which figure is seen, and how. */
final class FigureBar {
  private final FindingsModel model;
  private final FlowPane node = new FlowPane();
  private final ToggleGroup group = new ToggleGroup();
  private final Map<FigureKind, ToggleButton> tabs = new EnumMap<>(FigureKind.class);

  FigureBar(FindingsModel model) {
    this.model = model;
    node.getStyleClass().add("figure-bar");
    HBox buttons = new HBox();
    buttons.getStyleClass().add("figure-tabs");
    for (FigureKind kind : FigureKind.values()) {
      buttons.getChildren().add(tab(kind));
    }
    FigureWishes wishes = model.wishesProperty().get();
    node.getChildren()
        .addAll(
            buttons,
            choice(
                "rank-by",
                "Ranked by",
                List.of(RankBy.values()),
                RankBy::words,
                wishes.rankBy(),
                wanted -> model.wish(model.wishesProperty().get().by(wanted)),
                FigureKind.TRIALS),
            choice(
                "clean-measure",
                "Cleanness by",
                List.of(CleanMeasure.values()),
                CleanMeasure::words,
                wishes.measure(),
                wanted -> model.wish(model.wishesProperty().get().against(wanted)),
                FigureKind.FAST_AGAINST_CLEAN));
    model.wishesProperty().addListener((property, was, is) -> select(is.kind()));
    select(wishes.kind());
  }

  Node node() {
    return node;
  }

  /** Gives the focus to the figure's tab. */
  void focus() {
    ToggleButton tab = tabs.get(model.wishesProperty().get().kind());
    if (tab != null) {
      tab.requestFocus();
    }
  }

  private ToggleButton tab(FigureKind kind) {
    int number = kind.number();
    ToggleButton tab = new ToggleButton(number + "  " + kind.words());
    tab.setId("figure-" + number);
    tab.setTooltip(new Tooltip(kind.words() + " (key " + number + ")"));
    tab.setToggleGroup(group);
    tab.selectedProperty()
        .addListener(
            (property, was, is) -> {
              if (is) {
                model.wish(model.wishesProperty().get().of(kind));
              } else if (group.getSelectedToggle() == null) {
                // one figure is always chosen
                tab.setSelected(true);
              }
            });
    tabs.put(kind, tab);
    return tab;
  }

  private void select(FigureKind kind) {
    ToggleButton tab = tabs.get(kind);
    if (tab != null) {
      tab.setSelected(true);
    }
  }

  private <T> Node choice(
      String id,
      String words,
      List<T> all,
      Function<T, String> wording,
      T chosen,
      Consumer<T> wish,
      FigureKind kind) {
    ComboBox<T> box = new ComboBox<>();
    box.setId(id);
    box.setAccessibleText(words);
    box.getItems().setAll(all);
    box.setValue(chosen);
    box.setConverter(
        new StringConverter<>() {
          @Override
          public String toString(T one) {
            return one == null ? "" : wording.apply(one);
          }

          @Override
          public T fromString(String typed) {
            throw new UnsupportedOperationException("nothing is typed here");
          }
        });
    box.valueProperty().addListener((property, was, is) -> wish.accept(is));
    Label label = new Label(words);
    label.setLabelFor(box);
    HBox pair = new HBox(label, box);
    pair.getStyleClass().add("choice");
    Runnable showIfUsed =
        () -> {
          boolean used = model.wishesProperty().get().kind() == kind;
          pair.setVisible(used);
          pair.setManaged(used);
        };
    model.wishesProperty().addListener((property, was, is) -> showIfUsed.run());
    showIfUsed.run();
    return pair;
  }
}
