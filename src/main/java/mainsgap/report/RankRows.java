package mainsgap.report;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import mainsgap.session.SessionHeader;
import mainsgap.transfer.claim.DeclaredClaim;

/** The rows of the ranking on one drawing. */
final class RankRows {
  /** A name has at least this share of the width, where it needs it. */
  private static final double NAME_SHARE = 0.3;

  /** A row of words with its bar, in text heights. */
  private static final double LEAST_ROW = 1.55;

  private static final double MOST_ROW = 8;

  /** From this height on, type grows. */
  private static final double ROOMY_ROW = 5;

  /** Of what the words leave of a row, its bar takes this much. */
  private static final double MOST_BAR_SHARE = 0.8;

  /** Where there are few rows their type is larger, up to this. */
  private static final double MOST_GROWTH = 1.8;

  /** Of a bar that ends at the edge, the declared time is still seen. */
  private static final double HEADROOM = 1.015;

  private final Graphics2D g;
  private final FigureSheet sheet;
  private final Rectangle2D room;
  private final Ranking ranking;
  private final Lettering plain;
  private final Lettering bold;
  private final double text;
  private final RankType type;
  private final List<RankColumn> columns;

  RankRows(Graphics2D g, FigureSheet sheet, Rectangle2D room, Ranking ranking) {
    this.g = g;
    this.sheet = sheet;
    this.room = room;
    this.ranking = ranking;
    List<RankColumn> all = RankColumn.of(ranking);
    double growth = mostGrowth(sheet, room, ranking);
    RankType type = RankType.of(g, growth * sheet.textPixels());
    while (growth > 1 && type.width(all) + type.widest(ranking) > room.getWidth()) {
      growth = Math.max(1, growth - 0.1);
      type = RankType.of(g, growth * sheet.textPixels());
    }
    this.text = type.textPixels();
    this.plain = type.plain();
    this.bold = type.bold();
    this.type = type;
    double names = Math.min(type.widest(ranking), NAME_SHARE * room.getWidth());
    this.columns = RankColumn.fitting(all, room.getWidth() - names, type::width);
  }

  private static double mostGrowth(FigureSheet sheet, Rectangle2D room, Ranking ranking) {
    double each = room.getHeight() / (ranking.places().size() + 1);
    return Math.max(1, Math.min(MOST_GROWTH, each / (ROOMY_ROW * sheet.textPixels())));
  }

  /** The height from which on all rows have their room. */
  static double wanted(Graphics2D g, FigureSheet sheet, Ranking ranking) {
    return Lettering.plain(g, sheet.textPixels()).lineHeight()
        + ranking.places().size() * LEAST_ROW * sheet.textPixels();
  }

  /** Whether the bars stand on an axis of time, so that a declared time has its place on it. */
  static boolean showsDeclared(Ranking ranking) {
    return ranking.by() != RankBy.RESIDUAL
        && ranking.places().stream().anyMatch(place -> place.series().header().claim() != null);
  }

  void draw() {
    double top = room.getY() + plain.lineHeight();
    headings();
    int places = ranking.places().size();
    double least = LEAST_ROW * text;
    int fits = (int) Math.max(1, Math.floor((room.getMaxY() - top) / least));
    int shown = places <= fits ? places : Math.max(1, fits - 1);
    double height = Math.min(MOST_ROW * text, (room.getMaxY() - top) / Math.min(fits, places));
    for (int i = 0; i < shown; i++) {
      row(i, top + i * height, height);
    }
    if (shown < places) {
      String rest = Wording.moreUnits(places - shown);
      plain.draw(
          plain.fitted(rest, room.getWidth()),
          room.getX(),
          top + shown * height,
          sheet.look().text());
    }
  }

  private void headings() {
    double right = room.getMaxX();
    for (int i = columns.size() - 1; i >= 0; i--) {
      RankColumn column = columns.get(i);
      Lettering lettering = type.of(column);
      double x = right - lettering.width(column.heading());
      lettering.draw(column.heading(), x, room.getY(), sheet.look().quiet());
      right -= type.width(column);
    }
  }

  private void row(int index, double top, double height) {
    Ranking.Place place = ranking.places().get(index);
    double right = room.getMaxX();
    for (int i = columns.size() - 1; i >= 0; i--) {
      RankColumn column = columns.get(i);
      Lettering lettering = type.of(column);
      String words = column.words().get(index);
      lettering.draw(words, right - lettering.width(words), top, sheet.look().text());
      right -= type.width(column);
    }
    List<SessionHeader> all =
        ranking.places().stream().map(other -> other.series().header()).toList();
    String rank = place.rank() == null ? "" : place.rank() + ". ";
    String mark = FigureNotes.mark(place.series().header(), place.isCompared(), all);
    double forName = right - room.getX() - bold.width(mark);
    String name = bold.fittedName(rank + place.series().name(), forName);
    bold.draw(name + mark, room.getX(), top, sheet.look().text());
    bar(
        place,
        top + plain.lineHeight(),
        Math.min(2.4 * text, MOST_BAR_SHARE * (height - 1.35 * text)));
  }

  private void bar(Ranking.Place place, double top, double height) {
    double most = most();
    Double figure = ranking.by().of(place.series());
    Color colour = place.isCompared() ? sheet.look().series(0) : sheet.look().quiet();
    g.setColor(sheet.look().grid());
    g.setStroke(new BasicStroke((float) Math.max(1, text / 18)));
    g.draw(new Line2D.Double(room.getX(), top + height, room.getMaxX(), top + height));
    if (figure != null && figure.isInfinite()) {
      endless(colour, top, height);
    } else if (figure != null) {
      g.setColor(colour);
      g.fill(new Rectangle2D.Double(room.getX(), top, at(figure, most), height));
    }
    DeclaredClaim claim = place.series().header().claim();
    if (claim != null && ranking.by() != RankBy.RESIDUAL) {
      double x = room.getX() + at(claim.millis(), most);
      new StripMarks(g, sheet.look(), text).declared(x, top, top + height + text / 4);
    }
  }

  /** A unit that did not come back in its record: its bar has no end. */
  private void endless(Color colour, double top, double height) {
    double half = height / 2;
    g.setColor(colour);
    g.fill(new Rectangle2D.Double(room.getX(), top, room.getWidth() - 2 * height, height));
    Marks.draw(
        g,
        Marks.of(TrialPoint.Kind.NO_RETURN),
        room.getMaxX() - 1.2 * half,
        top + half,
        half,
        colour,
        false);
  }

  private double at(double figure, double most) {
    return most > 0 ? figure / most * room.getWidth() : 0;
  }

  private double most() {
    Stream<Double> figures =
        ranking.places().stream()
            .map(place -> ranking.by().of(place.series()))
            .filter(Objects::nonNull)
            .filter(figure -> !figure.isInfinite());
    Stream<Double> declared =
        ranking.by() == RankBy.RESIDUAL
            ? Stream.empty()
            : ranking.places().stream()
                .map(place -> place.series().header().claim())
                .filter(Objects::nonNull)
                .map(DeclaredClaim::millis);
    return HEADROOM
        * Stream.concat(figures, declared).mapToDouble(Double::doubleValue).max().orElse(0);
  }
}
