package mainsgap.report;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import mainsgap.session.SessionHeader;
import mainsgap.transfer.claim.DeclaredClaim;

/** The row of one unit: its name and figures in words, and its strip below them. */
final class StripRow {
  private static final double RADIUS = 0.32;
  private static final double LARGE_RADIUS = 0.48;
  private static final double ROOMY_STRIP = 4;
  private static final double STRIP_IN_ORDER = 8;
  private static final int MOST_ARROWS = 5;

  /** A name has at least this share of a line that it shares with figures. */
  private static final double NAME_SHARE = 0.55;

  private final Graphics2D g;
  private final FigureSheet sheet;
  private final AxisPlot plot;
  private final Rectangle2D row;
  private final RankBy by;
  private final List<SessionHeader> all;
  private final Lettering plain;
  private final Lettering bold;
  private final double text;

  StripRow(Graphics2D g, FigureSheet sheet, AxisPlot plot, Rectangle2D row, Ranking ranking) {
    this.g = g;
    this.sheet = sheet;
    this.plot = plot;
    this.row = row;
    this.by = ranking.by();
    this.all = ranking.places().stream().map(place -> place.series().header()).toList();
    this.text = sheet.textPixels();
    this.plain = Lettering.plain(g, text);
    this.bold = Lettering.bold(g, text);
  }

  void draw(Ranking.Place place) {
    double top = row.getY() + words(place);
    strip(place.series(), top, Math.max(top + text / 2, row.getMaxY() - text / 6));
  }

  /** The name alone, beside the strip, from {@code left} on: for rows as low as a line. */
  void drawNarrow(Ranking.Place place, double left) {
    String rank = place.rank() == null ? "" : place.rank() + ". ";
    String mark = FigureNotes.mark(place.series().header(), place.isCompared(), all);
    double room = row.getX() - left - text - bold.width(mark);
    bold.draw(
        bold.fittedName(rank + place.series().name(), room) + mark,
        left,
        row.getCenterY() - 0.62 * text,
        sheet.look().text());
    strip(place.series(), row.getY() + text / 8, row.getMaxY() - text / 8);
  }

  /** The words on one line where they fit, else on two where the row is high enough. */
  private double words(Ranking.Place place) {
    UnitSeries series = place.series();
    String rank = place.rank() == null ? "" : place.rank() + ". ";
    String mark = FigureNotes.mark(series.header(), place.isCompared(), all);
    List<String> lines = lines(series);
    double whole = bold.width(rank + series.name() + mark);
    double room = row.getWidth() - text;
    boolean onTwo =
        whole + plain.width(lines.get(0)) > room && row.getHeight() >= 3.2 * plain.lineHeight();
    double height = (onTwo ? 2 : 1) * plain.lineHeight();
    g.setColor(sheet.look().ground());
    g.fill(new Rectangle2D.Double(row.getX(), row.getY(), row.getWidth(), height));
    double roomForFigures = onTwo ? row.getWidth() : room - Math.min(whole, room * NAME_SHARE);
    String figures =
        lines.stream()
            .filter(line -> plain.width(line) <= roomForFigures)
            .findFirst()
            .orElse(plain.fitted(lines.get(lines.size() - 1), roomForFigures));
    double roomForName = onTwo ? row.getWidth() : room - plain.width(figures);
    String name = bold.fittedName(rank + series.name(), roomForName - bold.width(mark));
    bold.draw(name + mark, row.getX(), row.getY(), sheet.look().text());
    double x = onTwo ? row.getX() : row.getMaxX() - plain.width(figures);
    plain.draw(figures, x, row.getY() + height - plain.lineHeight(), sheet.look().text());
    return height;
  }

  private List<String> lines(UnitSeries series) {
    List<String> lines = SeriesWords.of(series).lines();
    Double ranked = by == RankBy.RESIDUAL ? RankBy.RESIDUAL.of(series) : null;
    return ranked == null || ranked.isInfinite()
        ? lines
        : lines.stream()
            .map(line -> "residual up to " + Wording.plain(ranked) + " % · " + line)
            .toList();
  }

  private void strip(UnitSeries series, double top, double bottom) {
    StripMarks marks = new StripMarks(g, sheet.look(), text);
    double low = bottom - text / 3;
    Double mean = series.summary().meanMillis();
    Double spread = series.summary().standardDeviationMillis();
    boolean sawGaps = series.summary().maxMillis() != null && series.summary().maxMillis() > 0;
    if (sawGaps && mean != null && spread != null) {
      marks.spread(plot.x(Math.max(0, mean - spread)), plot.x(mean + spread), top, low);
    }
    DeclaredClaim claim = series.header().claim();
    if (claim != null) {
      marks.declared(plot.x(claim.millis()), top, bottom);
    }
    points(series, top, low);
    if (sawGaps && mean != null) {
      marks.mean(plot.x(mean), top, low);
    }
    Double bound = series.summary().upperToleranceBoundMillis();
    if (sawGaps && bound != null) {
      marks.bound(plot.x(bound), top, low);
    }
    Double largest = series.summary().maxMillis();
    if (largest != null && plot.x(largest) <= row.getMaxX()) {
      marks.largest(plot.x(largest), bottom);
    }
  }

  private void points(UnitSeries series, double top, double bottom) {
    List<TrialPoint> sorted =
        series.points().stream()
            .filter(point -> point.millis() != null)
            .sorted(Comparator.comparingDouble(StripRow::millis))
            .toList();
    boolean isRoomy = bottom - top > ROOMY_STRIP * text;
    double radius = Math.min((isRoomy ? LARGE_RADIUS : RADIUS) * text, (bottom - top) / 2);
    StripHeights heights = heights(series, top, bottom, radius);
    List<TrialPoint> beyond = new ArrayList<>();
    for (TrialPoint point : sorted) {
      double x = plot.x(millis(point));
      if (x > row.getMaxX()) {
        beyond.add(point);
      } else {
        draw(point, x, heights.of(point, x), radius);
      }
    }
    if (!beyond.isEmpty()) {
      beyondTheEdge(beyond, (top + bottom) / 2, radius);
    }
  }

  /** In the order of the trials where there is so much room that a drift would be seen. */
  private StripHeights heights(UnitSeries series, double top, double bottom, double radius) {
    int trials = series.points().size();
    if (bottom - top < STRIP_IN_ORDER * text || trials < 2) {
      return new StripHeights.Lanes((top + bottom) / 2, (bottom - top) / 2 - radius, 2.1 * radius);
    }
    StripHeights.InOrder order =
        new StripHeights.InOrder(top + 1.5 * text, bottom - 1.5 * text, trials);
    for (int number : List.of(1, trials)) {
      double y = order.ofNumber(number) - 0.62 * text;
      onGround("trial " + number, row.getX() + text, y);
    }
    return order;
  }

  /** No line of the grid runs through the words. */
  private void onGround(String words, double x, double y) {
    g.setColor(sheet.look().ground());
    g.fill(new Rectangle2D.Double(x, y, plain.width(words), plain.lineHeight()));
    plain.draw(words, x, y, sheet.look().quiet());
  }

  private void draw(TrialPoint point, double x, double y, double radius) {
    Color colour = point.isSetAside() ? sheet.look().quiet() : sheet.look().of(point.kind());
    Double u = point.uncertaintyMillis();
    if (u != null && point.kind() != TrialPoint.Kind.NO_INTERRUPTION) {
      double from = plot.x(Math.max(0, millis(point) - u));
      double to = plot.x(millis(point) + u);
      if (to - from > 2 * radius) {
        g.setColor(colour);
        g.setStroke(new BasicStroke((float) Math.max(1, text / 18)));
        g.draw(new Line2D.Double(from, y, Math.min(to, row.getMaxX()), y));
      }
    }
    Marks.draw(g, Marks.of(point.kind()), x, y, radius, colour, point.isSetAside());
  }

  /** So long that they would press all others together: arrows at the edge, with their words. */
  private void beyondTheEdge(List<TrialPoint> points, double y, double radius) {
    int arrows = Math.min(MOST_ARROWS, points.size());
    double x = row.getMaxX() - radius;
    for (TrialPoint point : points.subList(0, arrows)) {
      Color colour = point.isSetAside() ? sheet.look().quiet() : sheet.look().of(point.kind());
      Marks.draw(g, Marks.of(point.kind()), x, y, radius, colour, point.isSetAside());
      x -= 2.4 * radius;
    }
    String least = Wording.plain(Math.floor(millis(points.get(0))));
    String most = Wording.plain(Math.floor(millis(points.get(points.size() - 1))));
    String words =
        (points.size() > 1 ? points.size() + " at least " : "at least ")
            + (least.equals(most) ? least : least + " to " + most)
            + " ms";
    double width = plain.width(words);
    double left = x - width;
    double height = plain.lineHeight();
    g.setColor(sheet.look().ground());
    g.fill(new Rectangle2D.Double(left, y - height / 2, width, height));
    plain.draw(words, left, y - 0.62 * text, sheet.look().text());
  }

  private static double millis(TrialPoint point) {
    Double millis = point.millis();
    return millis == null ? Double.NaN : millis;
  }
}
