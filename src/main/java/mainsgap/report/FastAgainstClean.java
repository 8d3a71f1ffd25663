package mainsgap.report;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import mainsgap.session.SessionHeader;

/**
 * The transfer time of every trial against how clean its return is, a shape for each unit.
 *
 * @param ranking the units in their order, and which of them are compared
 * @param measure of cleanness
 */
public record FastAgainstClean(Ranking ranking, CleanMeasure measure) implements Figure {
  private static final double HEADROOM = 1.08;
  private static final double RADIUS = 0.42;

  /** Holds the trials of the series against {@code measure}. */
  public static FastAgainstClean of(List<UnitSeries> series, CleanMeasure measure) {
    return new FastAgainstClean(Ranking.of(series, RankBy.LARGEST), measure);
  }

  @Override
  public String title() {
    return "Fast against clean";
  }

  @Override
  public void draw(Graphics2D g, FigureSheet sheet) {
    Rectangle2D room = FigureFrame.draw(g, sheet, words(sheet.look()));
    AxisPlot plot =
        AxisPlot.draw(
            g,
            sheet,
            room,
            new AxisPlot.Range(0, end(true)),
            new AxisPlot.Range(0, end(false)),
            "transfer time, ms",
            measure.words() + ", " + measure.unit());
    for (int i = 0; i < ranking.places().size(); i++) {
      for (TrialPoint point : ranking.places().get(i).series().points()) {
        draw(g, sheet, plot, i, point);
      }
    }
  }

  private void draw(Graphics2D g, FigureSheet sheet, AxisPlot plot, int unit, TrialPoint point) {
    Double clean = measure.of(point);
    if (!hasPlace(point) || clean == null || point.millis() == null) {
      return;
    }
    Marks.draw(
        g,
        Marks.ofUnit(unit),
        plot.x(point.millis()),
        plot.y(clean),
        RADIUS * sheet.textPixels(),
        sheet.look().series(unit),
        point.isSetAside());
  }

  private boolean hasPlace(TrialPoint point) {
    return point.millis() != null
        && point.kind() != TrialPoint.Kind.NO_RETURN
        && measure.of(point) != null;
  }

  private FigureFrame.Words words(FigureLook look) {
    List<Ranking.Place> places = ranking.places();
    List<SessionHeader> headers = places.stream().map(place -> place.series().header()).toList();
    long shown = points().stream().filter(this::hasPlace).count();
    String subtitle =
        FigureNotes.simulated(headers)
            + Wording.task(ranking.task())
            + " · "
            + Readings.counted((int) shown, "trial")
            + " of "
            + Readings.counted(places.size(), "unit")
            + " · nearer to the lower left corner is faster and cleaner";
    List<Legend.Entry> legend = new ArrayList<>();
    for (int i = 0; i < places.size(); i++) {
      legend.add(entry(i, places.get(i), look));
    }
    if (points().stream().anyMatch(point -> point.isSetAside() && hasPlace(point))) {
      legend.add(
          new Legend.Entry(
              "hollow: set aside",
              (g, x, y, text) ->
                  Marks.draw(g, Marks.ofUnit(0), x, y, RADIUS * text, look.quiet(), true)));
    }
    List<String> notes = new ArrayList<>(ranking.refusals());
    notes.addAll(FigureNotes.someSimulated(headers));
    notes.addAll(leftOut());
    notes.add(measure.definition());
    notes.add(FigureNotes.TRANSFER_TIME);
    return new FigureFrame.Words(title(), subtitle, legend, notes);
  }

  private Legend.Entry entry(int unit, Ranking.Place place, FigureLook look) {
    UnitSeries series = place.series();
    long shown = series.points().stream().filter(this::hasPlace).count();
    List<SessionHeader> headers =
        ranking.places().stream().map(other -> other.series().header()).toList();
    String words =
        series.name()
            + FigureNotes.mark(series.header(), place.isCompared(), headers)
            + " ("
            + (shown == 0 ? "none shown" : shown)
            + ")";
    return new Legend.Entry(
        words,
        (g, x, y, text) ->
            Marks.draw(g, Marks.ofUnit(unit), x, y, RADIUS * text, look.series(unit), false));
  }

  /** Trials without a place in the figure, in words. */
  private List<String> leftOut() {
    long without = 0;
    long refused = 0;
    long noReturn = 0;
    for (TrialPoint point : points()) {
      if (point.kind() == TrialPoint.Kind.REFUSED) {
        refused++;
      } else if (point.kind() == TrialPoint.Kind.NO_RETURN) {
        noReturn++;
      } else if (!hasPlace(point)) {
        without++;
      }
    }
    List<String> parts = new ArrayList<>();
    if (noReturn > 0) {
      parts.add(noReturn + " without a return in the record");
    }
    if (refused > 0) {
      parts.add(refused + " refused");
    }
    if (without > 0) {
      parts.add(without + " whose record does not tell the " + measure.words());
    }
    return parts.isEmpty() ? List.of() : List.of("Not shown: " + String.join(", ", parts) + ".");
  }

  private List<TrialPoint> points() {
    return ranking.places().stream().flatMap(place -> place.series().points().stream()).toList();
  }

  private double end(boolean ofTime) {
    double most = 0;
    for (TrialPoint point : points()) {
      Double value = ofTime ? point.millis() : measure.of(point);
      if (hasPlace(point) && value != null) {
        most = Math.max(most, value);
      }
    }
    return most > 0 ? HEADROOM * most : 1;
  }
}
