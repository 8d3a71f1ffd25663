package mainsgap.report;

import java.util.ArrayList;
import java.util.List;
import mainsgap.report.Legend.Entry;

/** The legend of the strips: only what they show. */
final class StripLegend {
  private static final double MARK_RADIUS = 0.34;

  private StripLegend() {}

  static List<Entry> of(List<UnitSeries> series, FigureLook look) {
    List<Entry> entries = new ArrayList<>();
    for (TrialPoint.Kind kind : TrialPoint.Kind.values()) {
      if (series.stream()
          .flatMap(one -> one.standing().stream())
          .anyMatch(point -> point.kind() == kind)) {
        entries.add(point(kind.words(), kind, look));
      }
    }
    if (series.stream().anyMatch(StripLegend::showsSetAside)) {
      entries.add(
          new Entry(
              "set aside",
              (g, x, y, text) ->
                  Marks.draw(
                      g,
                      Marks.of(TrialPoint.Kind.PASSED),
                      x,
                      y,
                      MARK_RADIUS * text,
                      look.quiet(),
                      true)));
    }
    figures(series, look, entries);
    return entries;
  }

  private static void figures(List<UnitSeries> series, FigureLook look, List<Entry> entries) {
    if (series.stream().anyMatch(one -> one.summary().meanMillis() != null)) {
      entries.add(
          new Entry(
              "mean ± s",
              (g, x, y, text) -> {
                StripMarks marks = new StripMarks(g, look, text);
                marks.spread(x - 0.5 * text, x + 0.5 * text, y - 0.3 * text, y + 0.3 * text);
                marks.mean(x, y - 0.4 * text, y + 0.4 * text);
              }));
    }
    if (series.stream().anyMatch(one -> one.summary().maxMillis() != null)) {
      entries.add(
          new Entry(
              "largest",
              (g, x, y, text) -> new StripMarks(g, look, text).largest(x, y + 0.25 * text)));
    }
    if (series.stream().anyMatch(one -> one.summary().upperToleranceBoundMillis() != null)) {
      entries.add(
          new Entry(
              "upper bound",
              (g, x, y, text) ->
                  new StripMarks(g, look, text)
                      .bound(x + 0.15 * text, y - 0.4 * text, y + 0.4 * text)));
    }
    if (series.stream().anyMatch(one -> one.header().claim() != null)) {
      entries.add(
          new Entry(
              "declared",
              (g, x, y, text) ->
                  new StripMarks(g, look, text).declared(x, y - 0.5 * text, y + 0.5 * text)));
    }
  }

  private static Entry point(String words, TrialPoint.Kind kind, FigureLook look) {
    return new Entry(
        words,
        (g, x, y, text) ->
            Marks.draw(g, Marks.of(kind), x, y, MARK_RADIUS * text, look.of(kind), false));
  }

  private static boolean showsSetAside(UnitSeries series) {
    return series.points().stream().anyMatch(point -> point.isSetAside() && point.millis() != null);
  }
}
