package mainsgap.report;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.font.FontRenderContext;
import java.util.ArrayList;
import java.util.List;

/** Text of one size on one drawing: measured, wrapped, cut and placed. */
final class Lettering {
  /** The family that every Java machine has. */
  static final String FAMILY = Font.SANS_SERIF;

  private static final double LINE_SPACING = 1.25;
  private static final String CUT = "…";

  /** Measured as on every drawing, whatever its scale: a figure must not change with the screen. */
  private static final FontRenderContext EVEN = new FontRenderContext(null, true, true);

  private final Graphics2D g;
  private final Font font;

  private Lettering(Graphics2D g, Font font) {
    this.g = g;
    this.font = font;
  }

  static Lettering plain(Graphics2D g, double pixels) {
    return new Lettering(g, font(Font.PLAIN, pixels));
  }

  static Lettering bold(Graphics2D g, double pixels) {
    return new Lettering(g, font(Font.BOLD, pixels));
  }

  private static Font font(int style, double pixels) {
    return new Font(FAMILY, style, 1).deriveFont((float) pixels);
  }

  Font font() {
    return font;
  }

  double lineHeight() {
    return Math.ceil(LINE_SPACING * font.getSize2D());
  }

  double width(String text) {
    return text.isEmpty() ? 0 : font.getStringBounds(text, EVEN).getWidth();
  }

  /** Draws a line whose box begins at the upper left corner {@code x, y}. */
  void draw(String text, double x, double y, Color colour) {
    if (text.isEmpty()) {
      return;
    }
    g.setFont(font);
    g.setColor(colour);
    g.drawString(text, (float) x, (float) (y + font.getSize2D()));
  }

  /** The text, cut at its end where it is wider than {@code most}. */
  String fitted(String text, double most) {
    if (width(text) <= most) {
      return text;
    }
    int[] points = text.codePoints().toArray();
    int fits = 0;
    int tooMany = points.length;
    while (tooMany - fits > 1) {
      int middle = (fits + tooMany) / 2;
      boolean does = width(new String(points, 0, middle) + CUT) <= most;
      fits = does ? middle : fits;
      tooMany = does ? tooMany : middle;
    }
    return new String(points, 0, fits).stripTrailing() + CUT;
  }

  /** A name, cut in its middle where it is wider: what tells it from others is often at its end. */
  String fittedName(String name, double most) {
    if (width(name) <= most) {
      return name;
    }
    int[] points = name.codePoints().toArray();
    int fits = 0;
    int tooMany = points.length;
    while (tooMany - fits > 1) {
      int middle = (fits + tooMany) / 2;
      boolean does = width(cut(points, middle)) <= most;
      fits = does ? middle : fits;
      tooMany = does ? tooMany : middle;
    }
    return cut(points, fits);
  }

  /** So many letters of a name: two thirds of them from its beginning. */
  private static String cut(int[] points, int letters) {
    int end = letters / 3;
    return new String(points, 0, letters - end).stripTrailing()
        + CUT
        + new String(points, points.length - end, end).stripLeading();
  }

  /** The text on as many lines as it needs, at most {@code mostLines}, the last one cut. */
  List<String> wrapped(String text, double most, int mostLines) {
    List<String> lines = new ArrayList<>();
    String line = "";
    String[] words = text.split(" ", -1);
    for (int i = 0; i < words.length; i++) {
      String longer = line.isEmpty() ? words[i] : line + " " + words[i];
      if (width(longer) <= most || line.isEmpty()) {
        line = longer;
      } else if (lines.size() == mostLines - 1) {
        line = line + " " + String.join(" ", List.of(words).subList(i, words.length));
        break;
      } else {
        lines.add(fitted(line, most));
        line = words[i];
      }
    }
    lines.add(fitted(line, most));
    return lines;
  }
}
