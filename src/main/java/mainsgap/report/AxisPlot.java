package mainsgap.report;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.Locale;
import org.jfree.chart.axis.AxisSpace;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;

/** The axes and grid of one drawing, and where values lie on it. */
final class AxisPlot {
  private static final RectangleInsets NO_INSETS = new RectangleInsets(0, 0, 0, 0);

  /** The longest label of the upright axis, in text heights. */
  private static final double UPRIGHT_SPACE = 3.6;

  private static final double LEVEL_SPACE = 1.7;

  /** Half of the last label of the level axis lies beyond the plot. */
  private static final double RIGHT_SPACE = 1.5;

  /** Words above the upright axis keep clear of its highest label. */
  private static final double WORDS_ABOVE = 1.5;

  /** A stretch of an axis. */
  record Range(double from, double to) {
    Range {
      if (!(from < to) || !Double.isFinite(from) || !Double.isFinite(to)) {
        throw new IllegalArgumentException("an axis runs upwards, found " + from + " to " + to);
      }
    }
  }

  private final NumberAxis level;
  private final NumberAxis upright;
  private final Rectangle2D area;

  private AxisPlot(NumberAxis level, NumberAxis upright, Rectangle2D area) {
    this.level = level;
    this.upright = upright;
    this.area = area;
  }

  /**
   * Draws the axes.
   *
   * @param room the plot with its tick labels and the words at its axes
   * @param levelWords stand below the level axis
   * @param uprightWords stand above the upright axis; empty where it has no scale of its own
   */
  static AxisPlot draw(
      Graphics2D g,
      FigureSheet sheet,
      Rectangle2D room,
      Range x,
      Range y,
      String levelWords,
      String uprightWords) {
    Lettering small = Lettering.plain(g, sheet.textPixels());
    boolean hasScale = !uprightWords.isEmpty();
    double above = hasScale ? WORDS_ABOVE * small.lineHeight() : 0;
    Rectangle2D plotArea =
        new Rectangle2D.Double(
            room.getX(),
            room.getY() + above,
            room.getWidth() - (RIGHT_SPACE * sheet.textPixels()),
            Math.max(1, room.getHeight() - above - small.lineHeight()));
    NumberAxis level = axis(x, sheet, small);
    NumberAxis upright = axis(y, sheet, small);
    upright.setVisible(hasScale);
    // a plot without a renderer draws no grid
    XYPlot plot = new XYPlot(null, level, upright, new XYLineAndShapeRenderer());
    plot.setInsets(NO_INSETS);
    plot.setAxisOffset(NO_INSETS);
    plot.setBackgroundPaint(null);
    plot.setOutlineVisible(false);
    plot.setDomainGridlinePaint(sheet.look().grid());
    plot.setRangeGridlinePaint(sheet.look().grid());
    plot.setDomainGridlineStroke(stroke(sheet));
    plot.setRangeGridlineStroke(stroke(sheet));
    plot.setRangeGridlinesVisible(hasScale);
    plot.setFixedDomainAxisSpace(space(LEVEL_SPACE * sheet.textPixels(), RectangleEdge.BOTTOM));
    plot.setFixedRangeAxisSpace(
        space(hasScale ? UPRIGHT_SPACE * sheet.textPixels() : 0, RectangleEdge.LEFT));
    PlotRenderingInfo info = new PlotRenderingInfo(null);
    plot.draw(g, plotArea, null, null, info);
    Rectangle2D area = info.getDataArea();
    small.draw(
        levelWords,
        area.getMaxX() - small.width(levelWords),
        plotArea.getMaxY(),
        sheet.look().text());
    small.draw(uprightWords, room.getX(), room.getY(), sheet.look().text());
    return new AxisPlot(level, upright, area);
  }

  Rectangle2D area() {
    return area;
  }

  double x(double value) {
    return level.valueToJava2D(value, area, RectangleEdge.BOTTOM);
  }

  double y(double value) {
    return upright.valueToJava2D(value, area, RectangleEdge.LEFT);
  }

  private static NumberAxis axis(Range range, FigureSheet sheet, Lettering small) {
    NumberAxis axis = new NumberAxis();
    axis.setStandardTickUnits(NumberAxis.createStandardTickUnits(Locale.ROOT));
    axis.setRange(range.from(), range.to());
    axis.setTickLabelFont(small.font());
    axis.setTickLabelPaint(sheet.look().text());
    axis.setAxisLinePaint(sheet.look().quiet());
    axis.setTickMarkPaint(sheet.look().quiet());
    axis.setAxisLineStroke(stroke(sheet));
    axis.setTickMarkStroke(stroke(sheet));
    axis.setTickMarkOutsideLength((float) (sheet.textPixels() / 4));
    double gap = sheet.textPixels() / 5;
    // of an upright axis, only the left one counts
    axis.setTickLabelInsets(new RectangleInsets(gap, 2.5 * gap, 0, 0));
    return axis;
  }

  private static BasicStroke stroke(FigureSheet sheet) {
    return new BasicStroke((float) Math.max(1, sheet.textPixels() / 18));
  }

  private static AxisSpace space(double size, RectangleEdge edge) {
    AxisSpace space = new AxisSpace();
    space.add(size, edge);
    return space;
  }
}
