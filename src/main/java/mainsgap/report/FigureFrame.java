package mainsgap.report;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** What stands around every plot: title, what is shown, legend and notes. */
final class FigureFrame {
  private static final double TITLE_SIZE = 1.45;
  private static final double EDGE = 0.8;
  private static final int MOST_SUBTITLE_LINES = 2;
  private static final int MOST_NOTE_LINES = 3;

  /** Notes give way before the plot does. */
  private static final double LEAST_PLOT_SHARE = 0.45;

  private final Graphics2D g;
  private final FigureSheet sheet;
  private final Lettering small;

  private FigureFrame(Graphics2D g, FigureSheet sheet) {
    this.g = g;
    this.sheet = sheet;
    this.small = Lettering.plain(g, sheet.textPixels());
  }

  /** Words around a plot. */
  record Words(String title, String subtitle, List<Legend.Entry> legend, List<String> notes) {}

  /** Fills the sheet, draws the words, and returns the room that is left for the plot. */
  static Rectangle2D draw(Graphics2D g, FigureSheet sheet, Words words) {
    return draw(g, sheet, words, 0);
  }

  /** The same where the plot is of use from {@code plotPixels} in height on: notes give way. */
  static Rectangle2D draw(Graphics2D g, FigureSheet sheet, Words words, double plotPixels) {
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setRenderingHint(
        RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
    g.setRenderingHint(
        RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
    g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    g.setColor(sheet.look().ground());
    g.fill(new Rectangle2D.Double(0, 0, sheet.widthPixels(), sheet.heightPixels()));
    return new FigureFrame(g, sheet).draw(words, plotPixels);
  }

  private Rectangle2D draw(Words words, double plotPixels) {
    double edge = EDGE * sheet.textPixels();
    double width = sheet.widthPixels() - 2 * edge;
    double top = head(words, edge, width);
    Legend legend = new Legend(words.legend(), small, sheet.textPixels(), width);
    double plot = Math.max(LEAST_PLOT_SHARE * sheet.heightPixels(), plotPixels);
    double roomForNotes = sheet.heightPixels() - plot - top - edge - legend.height();
    double bottom = notes(words.notes(), edge, width, roomForNotes);
    bottom -= legend.height();
    legend.draw(g, edge, bottom, sheet.look());
    return new Rectangle2D.Double(edge, top, width, Math.max(1, bottom - top));
  }

  private double head(Words words, double edge, double width) {
    Lettering large = Lettering.bold(g, TITLE_SIZE * sheet.textPixels());
    double y = edge / 2;
    large.draw(large.fitted(words.title(), width), edge, y, sheet.look().text());
    y += large.lineHeight();
    for (String line : small.wrapped(words.subtitle(), width, MOST_SUBTITLE_LINES)) {
      small.draw(line, edge, y, sheet.look().quiet());
      y += small.lineHeight();
    }
    return y + edge / 4;
  }

  /** The first notes matter most: those for which there is no room are left out from the end. */
  private double notes(List<String> notes, double edge, double width, double room) {
    List<String> lines = new ArrayList<>();
    for (String note : notes) {
      List<String> more = small.wrapped(note, width, MOST_NOTE_LINES);
      boolean fits = (lines.size() + more.size()) * small.lineHeight() <= room;
      if (fits) {
        lines.addAll(more);
      }
    }
    double top = sheet.heightPixels() - edge / 2 - lines.size() * small.lineHeight();
    double y = top;
    for (String line : lines) {
      small.draw(line, edge, y, sheet.look().quiet());
      y += small.lineHeight();
    }
    return top;
  }
}
