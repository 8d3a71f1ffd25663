package mainsgap.report;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import mainsgap.session.SessionHeader;
import mainsgap.transfer.claim.DeclaredClaim;

/**
 * Every trial of every unit on one axis of milliseconds, the units ranked.
 *
 * @param ranking the units in their order
 */
public record TrialStrips(Ranking ranking) implements Figure {
  /** A time that is only known to be at least so long is shown at the edge beyond this. */
  private static final double FARTHEST_ARROW = 1.5;

  private static final double HEADROOM = 1.06;

  /** A row holds its words and a strip of so many text heights. */
  private static final double LEAST_STRIP = 0.9;

  /** A row with its name beside it would like to have so many line heights, and needs so many. */
  private static final double NARROW_ROW = 1.1;

  private static final double LEAST_ROW = 0.95;

  /** Names beside strips take this share of the width. */
  private static final double NAMES_SHARE = 0.36;

  /** The axis below the strips, in text heights. */
  private static final double AXIS = 3.2;

  /** Ranks series by a figure of theirs. */
  public static TrialStrips of(List<UnitSeries> series, RankBy by) {
    return new TrialStrips(Ranking.of(series, by));
  }

  @Override
  public String title() {
    return "Transfer time of every trial";
  }

  @Override
  public void draw(Graphics2D g, FigureSheet sheet) {
    Lettering small = Lettering.plain(g, sheet.textPixels());
    double narrow = ranking.places().size() * NARROW_ROW * small.lineHeight() + axis(sheet);
    Rectangle2D room = FigureFrame.draw(g, sheet, words(sheet.look()), narrow);
    double least = small.lineHeight() + LEAST_STRIP * sheet.textPixels();
    boolean isRoomy = ranking.places().size() * least <= room.getHeight() - axis(sheet);
    if (isRoomy) {
      roomy(g, sheet, room);
    } else {
      narrow(g, sheet, room);
    }
  }

  /** What the axis of time takes. */
  private static double axis(FigureSheet sheet) {
    return AXIS * sheet.textPixels();
  }

  private AxisPlot axes(Graphics2D g, FigureSheet sheet, Rectangle2D room) {
    return AxisPlot.draw(
        g,
        sheet,
        room,
        new AxisPlot.Range(0, end()),
        new AxisPlot.Range(0, 1),
        "transfer time, ms",
        "");
  }

  private void roomy(Graphics2D g, FigureSheet sheet, Rectangle2D room) {
    AxisPlot plot = axes(g, sheet, room);
    int places = ranking.places().size();
    for (int i = 0; i < places; i++) {
      Rectangle2D row = row(plot.area(), i, places);
      new StripRow(g, sheet, plot, row, ranking).draw(ranking.places().get(i));
    }
  }

  /** The names beside the strips; those for which there still is no room are counted. */
  private void narrow(Graphics2D g, FigureSheet sheet, Rectangle2D room) {
    double names = NAMES_SHARE * room.getWidth();
    AxisPlot plot =
        axes(
            g,
            sheet,
            new Rectangle2D.Double(
                room.getX() + names, room.getY(), room.getWidth() - names, room.getHeight()));
    Lettering small = Lettering.plain(g, sheet.textPixels());
    int places = ranking.places().size();
    int fits =
        (int) Math.max(1, Math.floor(plot.area().getHeight() / (LEAST_ROW * small.lineHeight())));
    int rows = Math.min(places, fits);
    int shown = places <= fits ? places : Math.max(1, fits - 1);
    for (int i = 0; i < shown; i++) {
      Rectangle2D row = row(plot.area(), i, rows);
      new StripRow(g, sheet, plot, row, ranking).drawNarrow(ranking.places().get(i), room.getX());
    }
    if (shown < places) {
      String rest = small.fitted(Wording.moreUnits(places - shown), room.getWidth());
      small.draw(rest, room.getX(), row(plot.area(), shown, rows).getY(), sheet.look().text());
    }
  }

  private static Rectangle2D row(Rectangle2D area, int index, int rows) {
    double height = area.getHeight() / rows;
    return new Rectangle2D.Double(
        area.getX(), area.getY() + index * height, area.getWidth(), height);
  }

  private FigureFrame.Words words(FigureLook look) {
    List<UnitSeries> series = series();
    List<SessionHeader> headers = series.stream().map(UnitSeries::header).toList();
    int trials = series.stream().mapToInt(one -> one.summary().n()).sum();
    String subtitle =
        FigureNotes.simulated(headers)
            + Wording.task(ranking.task())
            + " · "
            + Readings.counted(trials, "valid trial")
            + " of "
            + Readings.counted(series.size(), "unit")
            + (series.size() > 1 ? " · ranked by " + ranking.by().words() : "");
    List<String> notes = new ArrayList<>(ranking.refusals());
    notes.addAll(FigureNotes.someSimulated(headers));
    notes.add(FigureNotes.TRANSFER_TIME);
    if (series.stream().anyMatch(one -> one.summary().upperToleranceBoundMillis() != null)) {
      notes.add(FigureNotes.UPPER_BOUND);
    }
    notes.addAll(FigureNotes.rules(series));
    return new FigureFrame.Words(title(), subtitle, StripLegend.of(series, look), notes);
  }

  private List<UnitSeries> series() {
    return ranking.places().stream().map(Ranking.Place::series).toList();
  }

  /** Where the axis ends: beyond all that is known, and beyond 'at least' where it is not far. */
  private double end() {
    double known =
        series().stream()
            .flatMap(TrialStrips::knownMillis)
            .mapToDouble(Double::doubleValue)
            .max()
            .orElse(0);
    double atLeast =
        series().stream()
            .flatMap(one -> one.points().stream())
            .filter(point -> point.kind() == TrialPoint.Kind.NO_RETURN)
            .map(TrialPoint::millis)
            .filter(Objects::nonNull)
            .mapToDouble(Double::doubleValue)
            .filter(millis -> known == 0 || millis <= FARTHEST_ARROW * known)
            .max()
            .orElse(0);
    double most = Math.max(known, atLeast);
    return most > 0 ? HEADROOM * most : 1;
  }

  private static Stream<Double> knownMillis(UnitSeries series) {
    DeclaredClaim claim = series.header().claim();
    Double bound = series.summary().upperToleranceBoundMillis();
    Double mean = series.summary().meanMillis();
    Double spread = series.summary().standardDeviationMillis();
    Stream<Double> marks =
        Stream.of(
            claim == null ? 0 : claim.millis(),
            bound == null ? 0 : bound,
            mean == null || spread == null ? 0 : mean + spread);
    return Stream.concat(
        marks,
        series.points().stream()
            .filter(point -> point.kind() != TrialPoint.Kind.NO_RETURN)
            .map(TrialPoint::millis)
            .filter(Objects::nonNull));
  }
}
