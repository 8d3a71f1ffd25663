package mainsgap.report;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.util.List;

/**
 * Draws what belongs to one of several traces in its colour, its dashes and its shape, which
 * together tell it from the others.
 *
 * @param index of the trace
 * @param look of the figure
 * @param textPixels the height of the smallest text
 */
record TracePen(int index, FigureLook look, double textPixels) {
  private static final int COLOURS = 4;
  private static final List<float[]> DASHES =
      List.of(
          new float[0], new float[] {5, 2}, new float[] {1.5f, 1.5f}, new float[] {7, 2, 1.5f, 2});

  /** How many traces differ by colour and dashes. */
  static final int DIFFERENT = COLOURS * DASHES.size();

  void line(Graphics2D g, Shape line) {
    g.setColor(look.series(index));
    g.setStroke(stroke());
    g.draw(line);
  }

  void mark(Graphics2D g, double x, double y, double radius, boolean hollow) {
    Marks.draw(g, Marks.ofUnit(index), x, y, radius * textPixels, look.series(index), hollow);
  }

  /** A piece of the line with its mark. */
  void legend(Graphics2D g, double x, double y) {
    line(g, new Line2D.Double(x - 0.65 * textPixels, y, x + 0.65 * textPixels, y));
    mark(g, x, y, 0.3, false);
  }

  private BasicStroke stroke() {
    float width = (float) Math.max(1.3, textPixels / 11);
    float[] dashes = DASHES.get(index / COLOURS % DASHES.size()).clone();
    if (dashes.length == 0) {
      return new BasicStroke(width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);
    }
    for (int i = 0; i < dashes.length; i++) {
      dashes[i] *= width;
    }
    return new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, dashes, 0);
  }
}
