package mainsgap.desk.trace;

import org.jspecify.annotations.Nullable;

/** Draws what stands about the traces: grid, gap and declared time, in whole pixels. */
final class PlotMarks {
  private static final int GAP_SHADE = 56;
  private static final int GUARD_SHADE = 110;
  private static final double LINE = 1;
  private static final double THICK_LINE = 2;

  /** Half the length of the strokes at the ends of the bracket and the ruler. */
  private static final double END_STROKE = 6;

  private static final double DASH = 6;

  private final Raster raster;
  private final PlotFrame frame;
  private final Palette palette;
  private final double pixelsOfUsual;

  PlotMarks(Raster raster, PlotFrame frame, Palette palette, double pixelsOfUsual) {
    this.raster = raster;
    this.frame = frame;
    this.palette = palette;
    this.pixelsOfUsual = pixelsOfUsual;
  }

  void shadeGap(@Nullable Gap gap) {
    if (gap != null) {
      raster.rectangle(
          x(gap.fromSeconds()),
          0,
          Math.max(x(gap.fromSeconds()) + 1, x(gap.toSeconds())),
          raster.height(),
          palette.gap(),
          GAP_SHADE);
    }
  }

  void drawGrid(Grid grid) {
    for (double millis : grid.millis().values()) {
      boolean zero = Math.abs(millis) < grid.millis().step() / 2;
      upright(millis * 1e-3, zero ? palette.axis() : palette.grid(), LINE);
    }
    for (double volts : grid.volts().values()) {
      boolean zero = Math.abs(volts) < grid.volts().step() / 2;
      level(y(volts), 0, raster.width(), zero ? palette.axis() : palette.grid(), LINE);
    }
  }

  /** The end of the declared time, down through the traces, and the guard band about it. */
  void drawLimit(@Nullable Ruler ruler) {
    if (ruler == null) {
      return;
    }
    int x = x(ruler.lengthSeconds());
    double dash = DASH * pixelsOfUsual;
    for (double top = frame.topPixels(); top < raster.height(); top += 2 * dash) {
      raster.rectangle(
          x - thickness(LINE) / 2,
          (int) top,
          x - thickness(LINE) / 2 + thickness(THICK_LINE),
          (int) (top + dash),
          palette.ruler(),
          Raster.WHOLE);
    }
  }

  /** The bracket of the gap in the upper half of the band over the traces. */
  void drawBracket(@Nullable Gap gap) {
    if (gap == null) {
      return;
    }
    int y = bracketY(frame);
    int from = x(gap.fromSeconds());
    int to = x(gap.toSeconds());
    level(y, from, to, palette.type(), THICK_LINE);
    endStroke(from, y, palette.type());
    if (!gap.open()) {
      endStroke(to, y, palette.type());
    }
    edge(from);
    if (!gap.open()) {
      edge(to);
    }
  }

  /** The ruler of the declared time in the lower half of that band. */
  void drawRuler(@Nullable Ruler ruler, Grid grid) {
    if (ruler == null) {
      return;
    }
    int y = rulerY(frame);
    double end = ruler.lengthSeconds();
    shadeGuard(ruler, y);
    level(y, x(0), x(end), palette.ruler(), THICK_LINE);
    endStroke(x(0), y, palette.ruler());
    endStroke(x(end), y, palette.ruler());
    for (double millis : grid.millis().values()) {
      if (millis > 0 && millis * 1e-3 < end) {
        int half = (int) Math.round(END_STROKE / 2 * pixelsOfUsual);
        stroke(x(millis * 1e-3), y - half, y + half, palette.ruler(), LINE);
      }
    }
  }

  private void shadeGuard(Ruler ruler, int y) {
    int half = (int) Math.round(END_STROKE * pixelsOfUsual);
    raster.rectangle(
        x(ruler.lengthSeconds() - ruler.guardSeconds()),
        y - half,
        x(ruler.lengthSeconds() + ruler.guardSeconds()),
        y + half,
        palette.ruler(),
        GUARD_SHADE);
  }

  static int bracketY(PlotFrame frame) {
    return frame.topPixels() / 4;
  }

  static int rulerY(PlotFrame frame) {
    return frame.topPixels() * 3 / 4;
  }

  /** A thin line from the bracket down through the traces: where the gap starts and ends. */
  private void edge(int x) {
    stroke(x, bracketY(frame), raster.height(), palette.type(), LINE);
  }

  private void upright(double seconds, int argb, double usualWidth) {
    stroke(x(seconds), frame.topPixels(), raster.height(), argb, usualWidth);
  }

  private void endStroke(int x, int y, int argb) {
    int half = (int) Math.round(END_STROKE * pixelsOfUsual);
    stroke(x, y - half, y + half, argb, THICK_LINE);
  }

  private void stroke(int x, int top, int bottom, int argb, double usualWidth) {
    int width = thickness(usualWidth);
    int left = x - width / 2;
    raster.rectangle(left, top, left + width, bottom, argb, Raster.WHOLE);
  }

  private void level(int y, int from, int to, int argb, double usualWidth) {
    int height = thickness(usualWidth);
    int top = y - height / 2;
    raster.rectangle(from, top, to, top + height, argb, Raster.WHOLE);
  }

  private int thickness(double usual) {
    return (int) Math.max(1, Math.round(usual * pixelsOfUsual));
  }

  private int x(double seconds) {
    double x = frame.xOf(seconds);
    return (int) Math.round(Math.max(-1e6, Math.min(1e6, x)));
  }

  private int y(double volts) {
    return (int) Math.round(frame.yOf(volts));
  }
}
