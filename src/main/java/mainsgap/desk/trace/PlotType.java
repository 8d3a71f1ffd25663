package mainsgap.desk.trace;

import javafx.scene.layout.Pane;

/** The type of a picture: ticks, units, the time of the gap, the declared time. */
final class PlotType {
  private static final double TICK_ROW_EMS = 0.95;
  private static final double BESIDE_EMS = 0.6;

  /** Half a digit of tick type. */
  private static final double HALF_DIGIT_EMS = 0.3;

  private final TypeLayer times;
  private final TypeLayer levels;
  private final TypeLayer units;
  private final TypeLayer gapTime;
  private final TypeLayer declaredTime;

  PlotType(Pane pane) {
    times = new TypeLayer(pane, "trace-tick");
    levels = new TypeLayer(pane, "trace-tick");
    units = new TypeLayer(pane, "trace-unit");
    gapTime = new TypeLayer(pane, "trace-gap-time");
    declaredTime = new TypeLayer(pane, "trace-declared-time");
  }

  void show(TraceScene scene, PlotPlace place, PlotFrame frame, Grid grid) {
    double tickRow = place.top() + place.height() + TICK_ROW_EMS * place.em();
    double right = place.left() + place.width();
    units.begin();
    double title = units.place("ms from " + scene.zeroWords(), right, tickRow, 1);
    units.place(scene.unit(), place.left() - BESIDE_EMS * place.em(), place.top() + place.em(), 1);
    units.end();
    times.begin();
    showTimes(place, frame, grid.millis(), tickRow, right - title - BESIDE_EMS * place.em());
    times.end();
    levels.begin();
    showVolts(place, frame, grid.volts());
    levels.end();
    showGap(scene, place, frame);
    showDeclared(scene, place, frame);
  }

  private void showTimes(
      PlotPlace place, PlotFrame frame, Ticks millis, double tickRow, double end) {
    for (double value : millis.values()) {
      String words = millis.words(value);
      double x = place.across(frame.xOf(value * 1e-3));
      if (x + words.length() * HALF_DIGIT_EMS * place.em() < end) {
        times.place(words, x, tickRow, 0.5);
      }
    }
  }

  /** Where the band stands beside, the unit has its place. */
  private void showVolts(PlotPlace place, PlotFrame frame, Ticks volts) {
    double x = place.left() - BESIDE_EMS * place.em();
    double highest = place.top() + 2 * place.em();
    for (double value : volts.values()) {
      double y = place.down(frame.yOf(value));
      if (y > highest) {
        levels.place(volts.words(value), x, y, 1);
      }
    }
  }

  private void showGap(TraceScene scene, PlotPlace place, PlotFrame frame) {
    gapTime.begin();
    Gap gap = scene.gap();
    if (gap != null) {
      double y = place.down(PlotMarks.bracketY(frame));
      showBeside(gapTime, gap.label(), gap.fromSeconds(), gap.toSeconds(), y, place, frame);
    }
    gapTime.end();
  }

  private void showDeclared(TraceScene scene, PlotPlace place, PlotFrame frame) {
    declaredTime.begin();
    Ruler ruler = scene.ruler();
    if (ruler != null) {
      double y = place.down(PlotMarks.rulerY(frame));
      double end = ruler.lengthSeconds() + ruler.guardSeconds();
      showBeside(declaredTime, ruler.label(), 0, end, y, place, frame);
    }
    declaredTime.end();
  }

  /** Type after the end of what it tells of; at the edge, with an arrow, where that is not seen. */
  private static void showBeside(
      TypeLayer layer,
      String words,
      double fromSeconds,
      double toSeconds,
      double y,
      PlotPlace place,
      PlotFrame frame) {
    double beside = BESIDE_EMS * place.em();
    double left = place.left() + beside;
    double right = place.left() + place.width() - beside;
    if (toSeconds < frame.view().fromSeconds()) {
      layer.place("◀ " + words, left, y, 0);
    } else if (fromSeconds > frame.view().toSeconds()) {
      layer.place(words + " ▶", right, y, 1);
    } else {
      layer.placeBeside(
          words,
          place.across(frame.xOf(fromSeconds)) - beside,
          place.across(frame.xOf(toSeconds)) + beside,
          y,
          left,
          right);
    }
  }
}
