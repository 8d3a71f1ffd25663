package mainsgap.desk.findings;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import mainsgap.report.FastAgainstClean;
import mainsgap.report.Figure;
import mainsgap.report.OverlaidTraces;
import mainsgap.report.RankTable;
import mainsgap.report.ReportException;
import mainsgap.report.TrialStrips;
import mainsgap.report.UnitSeries;

/**
 * All that a figure is made of.
 *
 * @param sessions those that it shows, at least one
 * @param rows their trials
 * @param traces those laid over each other
 * @param wishes which figure
 */
record FigureOrder(
    List<OpenedSession> sessions, List<TrialRow> rows, Set<TrialKey> traces, FigureWishes wishes) {

  FigureOrder {
    sessions = List.copyOf(sessions);
    rows = List.copyOf(rows);
    traces = Set.copyOf(traces);
  }

  /** One trial alone. */
  static FigureOrder of(TrialRow row, FigureWishes wishes) {
    return new FigureOrder(
        List.of(row.session()), List.of(row), Set.of(row.key()), wishes.of(FigureKind.TRACES));
  }

  /** What it shows, as a part of a file's name. */
  String fileName() {
    String words =
        wishes.kind() == FigureKind.TRACES && rows.size() == 1
            ? rows.get(0).unit() + " trial " + rows.get(0).key().number()
            : wishes.kind().words();
    return words.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
  }

  /**
   * The figure, made beside the UI thread.
   *
   * @throws RuntimeException with a sentence where it cannot be made
   */
  Figure figure(Captures captures) {
    List<UnitSeries> series =
        UnitSeries.of(sessions.stream().map(one -> one.kept().session()).toList());
    return switch (wishes.kind()) {
      case TRIALS -> TrialStrips.of(series, wishes.rankBy());
      case RANKING -> RankTable.of(series, wishes.rankBy());
      case FAST_AGAINST_CLEAN -> FastAgainstClean.of(series, wishes.measure());
      case TRACES -> overlaid(captures);
    };
  }

  private Figure overlaid(Captures captures) {
    List<TrialRow> chosen = rows.stream().filter(row -> traces.contains(row.key())).toList();
    if (chosen.isEmpty()) {
      throw new ReportException(
          "No trace is chosen: tick trials in the table, or press space on them there.");
    }
    if (chosen.size() > TraceChoice.MOST) {
      throw new ReportException(
          chosen.size()
              + " traces cannot be told apart: tick at most "
              + TraceChoice.MOST
              + " in the table.");
    }
    return OverlaidTraces.of(chosen.stream().map(captures::trace).toList(), wishes.alignment());
  }
}
