package mainsgap.report;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import mainsgap.session.SessionHeader;

/**
 * The units in their order, a row each: the rank, the name, the figures, and a bar for the one by
 * which they are ranked.
 *
 * @param ranking the units in their order
 */
public record RankTable(Ranking ranking) implements Figure {
  /** Ranks series by a figure of theirs. */
  public static RankTable of(List<UnitSeries> series, RankBy by) {
    return new RankTable(Ranking.of(series, by));
  }

  @Override
  public String title() {
    return "Ranking";
  }

  @Override
  public void draw(Graphics2D g, FigureSheet sheet) {
    Rectangle2D room =
        FigureFrame.draw(g, sheet, words(sheet.look()), RankRows.wanted(g, sheet, ranking));
    new RankRows(g, sheet, room, ranking).draw();
  }

  private FigureFrame.Words words(FigureLook look) {
    List<UnitSeries> series = ranking.places().stream().map(Ranking.Place::series).toList();
    List<SessionHeader> headers = series.stream().map(UnitSeries::header).toList();
    String subtitle =
        FigureNotes.simulated(headers)
            + Wording.task(ranking.task())
            + " · "
            + Readings.counted(series.size(), "unit")
            + (series.size() > 1 ? " ranked by " + ranking.by().words() : "");
    List<Legend.Entry> legend = new ArrayList<>();
    legend.add(
        new Legend.Entry(
            "from 0: " + ranking.by().figure(),
            (g, x, y, text) -> {
              g.setColor(look.series(0));
              g.fill(new Rectangle2D.Double(x - text / 2, y - text / 6, text, text / 3));
            }));
    if (RankRows.showsDeclared(ranking)) {
      legend.add(
          new Legend.Entry(
              "declared",
              (g, x, y, text) ->
                  new StripMarks(g, look, text).declared(x, y - text / 2, y + text / 2)));
    }
    List<String> notes = new ArrayList<>(ranking.refusals());
    notes.addAll(FigureNotes.someSimulated(headers));
    notes.add(FigureNotes.TRANSFER_TIME);
    if (series.stream().anyMatch(one -> one.summary().upperToleranceBoundMillis() != null)) {
      notes.add(FigureNotes.UPPER_BOUND);
    }
    notes.addAll(FigureNotes.rules(series));
    return new FigureFrame.Words(title(), subtitle, legend, notes);
  }
}
