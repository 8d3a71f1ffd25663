package mainsgap.report;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;

/** What stands for the figures of a series in its strip, and in the legend. */
final class StripMarks {
  private final Graphics2D g;
  private final FigureLook look;
  private final double textPixels;

  StripMarks(Graphics2D g, FigureLook look, double textPixels) {
    this.g = g;
    this.look = look;
    this.textPixels = textPixels;
  }

  /** A band from the mean less s to the mean plus s. */
  void spread(double fromX, double toX, double top, double bottom) {
    Color quiet = look.quiet();
    g.setColor(new Color(quiet.getRed(), quiet.getGreen(), quiet.getBlue(), 70));
    double width = Math.max(1, toX - fromX);
    g.fill(new Rectangle2D.Double(fromX, top, width, bottom - top));
  }

  /** An upright bar. */
  void mean(double x, double top, double bottom) {
    g.setColor(look.text());
    double half = Math.max(1, textPixels / 14);
    g.fill(new Rectangle2D.Double(x - half, top, 2 * half, bottom - top));
  }

  /** A bracket that closes to the right. */
  void bound(double x, double top, double bottom) {
    double hook = textPixels / 3;
    Path2D.Double bracket = new Path2D.Double();
    bracket.moveTo(x - hook, top);
    bracket.lineTo(x, top);
    bracket.lineTo(x, bottom);
    bracket.lineTo(x - hook, bottom);
    g.setColor(look.text());
    g.setStroke(new BasicStroke((float) Math.max(1.2, textPixels / 9)));
    g.draw(bracket);
  }

  /** A small triangle that points up at the largest one. */
  void largest(double x, double bottom) {
    double half = textPixels / 3.4;
    Path2D.Double triangle = new Path2D.Double();
    triangle.moveTo(x, bottom - 1.5 * half);
    triangle.lineTo(x + half, bottom);
    triangle.lineTo(x - half, bottom);
    triangle.closePath();
    g.setColor(look.text());
    g.fill(triangle);
  }

  /** A dashed upright line. */
  void declared(double x, double top, double bottom) {
    float width = (float) Math.max(1.2, textPixels / 9);
    float dash = (float) (textPixels / 4);
    g.setColor(look.text());
    g.setStroke(
        new BasicStroke(
            width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {dash, dash}, 0));
    g.draw(new Line2D.Double(x, top, x, bottom));
  }
}
