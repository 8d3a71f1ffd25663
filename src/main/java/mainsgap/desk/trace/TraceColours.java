package mainsgap.desk.trace;

import java.util.List;
import javafx.css.CssMetaData;
import javafx.css.Styleable;
import javafx.css.StyleableProperty;
import javafx.css.StyleablePropertyFactory;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;

/**
 * The colours that the style sheet gives a picture: {@code -trace-ground}, {@code -trace-grid},
 * {@code -trace-axis}, {@code -trace-type}, {@code -trace-gap} and {@code -trace-ruler}.
 */
final class TraceColours {
  private static final StyleablePropertyFactory<TraceView> FACTORY =
      new StyleablePropertyFactory<>(Region.getClassCssMetaData());

  private static final CssMetaData<TraceView, Color> GROUND =
      FACTORY.createColorCssMetaData(
          "-trace-ground", view -> view.colours().ground, Color.WHITE, false);
  private static final CssMetaData<TraceView, Color> GRID =
      FACTORY.createColorCssMetaData(
          "-trace-grid", view -> view.colours().grid, Color.web("#e3e6ea"), false);
  private static final CssMetaData<TraceView, Color> AXIS =
      FACTORY.createColorCssMetaData(
          "-trace-axis", view -> view.colours().axis, Color.web("#9aa1a9"), false);
  private static final CssMetaData<TraceView, Color> TYPE =
      FACTORY.createColorCssMetaData(
          "-trace-type", view -> view.colours().type, Color.web("#24292f"), false);
  private static final CssMetaData<TraceView, Color> GAP =
      FACTORY.createColorCssMetaData(
          "-trace-gap", view -> view.colours().gap, Color.web("#e0a33c"), false);
  private static final CssMetaData<TraceView, Color> RULER =
      FACTORY.createColorCssMetaData(
          "-trace-ruler", view -> view.colours().ruler, Color.web("#1f6feb"), false);

  private final StyleableProperty<Color> ground;
  private final StyleableProperty<Color> grid;
  private final StyleableProperty<Color> axis;
  private final StyleableProperty<Color> type;
  private final StyleableProperty<Color> gap;
  private final StyleableProperty<Color> ruler;

  /** Those of {@code view}, with {@code changed} run after each change. */
  TraceColours(TraceView view, Runnable changed) {
    ground = property(view, "ground", GROUND, changed);
    grid = property(view, "grid", GRID, changed);
    axis = property(view, "axis", AXIS, changed);
    type = property(view, "type", TYPE, changed);
    gap = property(view, "gap", GAP, changed);
    ruler = property(view, "ruler", RULER, changed);
  }

  static List<CssMetaData<? extends Styleable, ?>> cssMetaData() {
    return FACTORY.getCssMetaData();
  }

  Palette palette() {
    return Palette.on(argb(ground), argb(grid), argb(axis), argb(type), argb(gap), argb(ruler));
  }

  private static StyleableProperty<Color> property(
      TraceView view, String name, CssMetaData<TraceView, Color> data, Runnable changed) {
    return new javafx.css.SimpleStyleableObjectProperty<>(
        data, view, name, data.getInitialValue(view)) {
      @Override
      protected void invalidated() {
        get();
        changed.run();
      }
    };
  }

  private static int argb(StyleableProperty<Color> property) {
    Color colour = property.getValue();
    return 0xFF000000
        | level(colour.getRed()) << 16
        | level(colour.getGreen()) << 8
        | level(colour.getBlue());
  }

  private static int level(double share) {
    return (int) Math.round(255 * share);
  }
}
