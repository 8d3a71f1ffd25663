package mainsgap.desk.findings;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import mainsgap.report.CleanMeasure;
import mainsgap.report.OverlaidTraces;
import mainsgap.report.RankBy;

/** Chooses which figure is seen, and how. */
final class FigureBar {
  private final FindingsModel model;
  private final FlowPane node = new FlowPane();
  private final ToggleGroup group = new ToggleGroup();
  private final Map<FigureKind, ToggleButton> tabs = new EnumMap<>(FigureKind.class);
  private final Choice<RankBy> rankBy =
      new Choice<>("rank-by", "Ranked by", List.of(RankBy.values()), RankBy::words);
  private final Choice<CleanMeasure> measure =
      new Choice<>(
          "clean-measure", "Cleanness by", List.of(CleanMeasure.values()), CleanMeasure::words);
  private final Choice<OverlaidTraces.Alignment> alignment =
      new Choice<>(
          "alignment",
          "Aligned",
          List.of(OverlaidTraces.Alignment.values()),
          OverlaidTraces.Alignment::shortWords);
  private final Choice<TracePick> pick =
      new Choice<>("trace-pick", "Traces", List.of(TracePick.values()), TracePick::words);

  FigureBar(FindingsModel model) {
    this.model = model;
    node.getStyleClass().add("figure-bar");
    HBox buttons = new HBox();
    buttons.getStyleClass().add("figure-tabs");
    for (FigureKind kind : FigureKind.values()) {
      buttons.getChildren().add(tab(kind));
    }
    node.getChildren()
        .addAll(buttons, rankBy.node(), measure.node(), pick.node(), alignment.node());
    follow();
    model.wishesProperty().addListener((property, was, is) -> show(is));
    show(model.wishesProperty().get());
  }

  FlowPane node() {
    return node;
  }

  private void follow() {
    FigureWishes usual = model.wishesProperty().get();
    rankBy.valueProperty().set(usual.rankBy());
    rankBy.valueProperty().addListener((property, was, is) -> model.wish(wishes().by(is)));
    measure.valueProperty().set(usual.measure());
    measure.valueProperty().addListener((property, was, is) -> model.wish(wishes().against(is)));
    alignment.valueProperty().set(usual.alignment());
    alignment
        .valueProperty()
        .addListener((property, was, is) -> model.wish(wishes().alignedAt(is)));
    pick.valueProperty().set(model.traces().pickProperty().get());
    pick.valueProperty()
        .addListener(
            (property, was, is) -> {
              if (is != model.traces().pickProperty().get()) {
                model.traces().pick(is);
              }
            });
    model.traces().pickProperty().addListener((property, was, is) -> pick.valueProperty().set(is));
  }

  private FigureWishes wishes() {
    return model.wishesProperty().get();
  }

  private ToggleButton tab(FigureKind kind) {
    ToggleButton tab = new ToggleButton(kind.number() + "  " + kind.words());
    tab.setId("figure-" + kind.number());
    tab.setTooltip(new Tooltip(kind.words() + " (key " + kind.number() + ")"));
    tab.setToggleGroup(group);
    tab.setMinWidth(ToggleButton.USE_PREF_SIZE);
    tab.selectedProperty()
        .addListener(
            (property, was, is) -> {
              if (is) {
                model.wish(wishes().of(kind));
              } else if (group.getSelectedToggle() == null) {
                // one figure is always chosen
                tab.setSelected(true);
              }
            });
    tabs.put(kind, tab);
    return tab;
  }

  private void show(FigureWishes wishes) {
    FigureKind kind = wishes.kind();
    tabs.forEach((of, tab) -> tab.setSelected(of == kind));
    rankBy.showIf(kind == FigureKind.TRIALS || kind == FigureKind.RANKING);
    measure.showIf(kind == FigureKind.FAST_AGAINST_CLEAN);
    alignment.showIf(kind == FigureKind.TRACES);
    pick.showIf(kind == FigureKind.TRACES);
  }
}
