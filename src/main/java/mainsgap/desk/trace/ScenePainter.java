package mainsgap.desk.trace;

import java.util.List;

/**
 * Paints a scene into pixels, all but the type. Keeps its working arrays from picture to picture:
 * for one thread.
 */
final class ScenePainter {
  /** A curve lies under the trace and shows on both sides of it. */
  static final double CURVE_NIB = 3.5;

  static final double TRACE_NIB = 1.6;
  private static final double LEAST_PIXELS_A_CYCLE = 12;
  static final double MARK_RADIUS = 5;
  private static final double PIXELS_BETWEEN_MARKS = 170;

  private final Raster raster;
  private final Outline outline;
  private final Pen pen;

  ScenePainter(Raster raster) {
    this.raster = raster;
    this.outline = new Outline(raster.width());
    this.pen = new Pen(raster);
  }

  /**
   * Paints all of it anew.
   *
   * @param pixelsOfUsual how many pixels stand for one of a usual screen
   */
  void paint(TraceScene scene, PlotFrame frame, Grid grid, Palette palette, double pixelsOfUsual) {
    PlotMarks marks = new PlotMarks(raster, frame, palette, pixelsOfUsual);
    raster.fill(palette.ground());
    marks.shadeGap(scene.gap());
    marks.drawGrid(grid);
    marks.drawLimit(scene.ruler());
    drawCurves(scene.curves(), frame, palette, pixelsOfUsual);
    drawTraces(scene.traces(), frame, palette, pixelsOfUsual);
    marks.drawBracket(scene.gap());
    marks.drawRuler(scene.ruler(), grid);
  }

  private void drawCurves(
      List<Curve> curves, PlotFrame frame, Palette palette, double pixelsOfUsual) {
    for (int i = 0; i < curves.size(); i++) {
      Curve curve = curves.get(i);
      if (curve.cycleSeconds() > LEAST_PIXELS_A_CYCLE * pixelsOfUsual * frame.secondsPerPixel()) {
        outline.take(curve, frame);
        outline.breakUp(Dash.ofCurve(i), frame, pixelsOfUsual);
        pen.draw(outline, frame.topPixels(), CURVE_NIB * pixelsOfUsual, palette.curve(i));
      }
    }
  }

  /** The first one last, so that it lies on top. */
  private void drawTraces(
      List<Trace> traces, PlotFrame frame, Palette palette, double pixelsOfUsual) {
    for (int i = traces.size() - 1; i >= 0; i--) {
      outline.take(traces.get(i), frame);
      pen.draw(outline, frame.topPixels(), TRACE_NIB * pixelsOfUsual, palette.trace(i));
      if (traces.size() > 1) {
        double share = (double) i / traces.size();
        drawMarks(Mark.ofTrace(i), share, frame, pixelsOfUsual, palette.trace(i), palette.ground());
      }
    }
  }

  /** At equal distances from the zero, each trace's between those of the others. */
  private void drawMarks(
      Mark mark, double share, PlotFrame frame, double pixelsOfUsual, int argb, int ground) {
    double between = PIXELS_BETWEEN_MARKS * pixelsOfUsual;
    double first = frame.xOf(0) + (share + 0.5) * between;
    double x = first - Math.floor(first / between) * between;
    for (; x < raster.width(); x += between) {
      int strip = (int) (x * Outline.PER_PIXEL);
      double y = (outline.top(strip) + outline.bottom(strip)) / 2;
      if (y >= frame.topPixels()) {
        mark.draw(raster, x, y, MARK_RADIUS * pixelsOfUsual, argb, ground);
      }
    }
  }
}
