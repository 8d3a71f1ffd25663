package mainsgap.report;

import java.awt.Graphics2D;
import java.util.ArrayList;
import java.util.List;

/** What each mark stands for, in lines below a plot. */
final class Legend {
  private static final double MARK_WIDTH = 1.4;
  private static final double GAP = 1.1;

  /** Draws a mark about a place, in a box that is as high as a line and a little wider. */
  @FunctionalInterface
  interface Mark {
    /** Draws it. */
    void draw(Graphics2D g, double x, double y, double textPixels);
  }

  /** A mark and what it stands for. */
  record Entry(String words, Mark mark) {}

  private final List<List<Entry>> lines = new ArrayList<>();
  private final Lettering lettering;
  private final double textPixels;
  private final double most;

  /**
   * Parts the entries into lines.
   *
   * @param most the width
   */
  Legend(List<Entry> entries, Lettering lettering, double textPixels, double most) {
    this.lettering = lettering;
    this.textPixels = textPixels;
    this.most = most;
    double x = Double.POSITIVE_INFINITY;
    for (Entry entry : entries) {
      double width = width(entry);
      if (x + width > most) {
        lines.add(new ArrayList<>());
        x = 0;
      }
      lines.get(lines.size() - 1).add(entry);
      x += width + GAP * textPixels;
    }
  }

  double height() {
    return lines.size() * lettering.lineHeight();
  }

  /** Draws it from the upper left corner {@code x, y} on. */
  void draw(Graphics2D g, double x, double y, FigureLook look) {
    double lineY = y;
    for (List<Entry> line : lines) {
      double at = x;
      for (Entry entry : line) {
        double markWidth = MARK_WIDTH * textPixels;
        entry.mark().draw(g, at + markWidth / 2, lineY + 0.62 * textPixels, textPixels);
        String words = lettering.fittedName(entry.words(), most - markWidth);
        lettering.draw(words, at + markWidth, lineY, look.text());
        at += width(entry) + GAP * textPixels;
      }
      lineY += lettering.lineHeight();
    }
  }

  private double width(Entry entry) {
    return Math.min(most, MARK_WIDTH * textPixels + lettering.width(entry.words()));
  }
}
