package mainsgap.desk.findings;

import java.util.List;
import mainsgap.report.FastAgainstClean;
import mainsgap.report.Figure;
import mainsgap.report.TrialStrips;
import mainsgap.report.UnitSeries;

/**
 * All that a figure is made of.
 *
 * @param sessions those that it shows, at least one
 * @param wishes which figure
 */
record FigureOrder(List<OpenedSession> sessions, FigureWishes wishes) {

  FigureOrder {
    sessions = List.copyOf(sessions);
  }

  /**
   * The figure, made beside the UI thread.
   *
   * @throws mainsgap.report.ReportException with a sentence where it cannot be made
   */
  Figure figure() {
    List<UnitSeries> series =
        UnitSeries.of(sessions.stream().map(one -> one.kept().session()).toList());
    return switch (wishes.kind()) {
      case TRIALS -> TrialStrips.of(series, wishes.rankBy());
      case FAST_AGAINST_CLEAN -> FastAgainstClean.of(series, wishes.measure());
    };
  }
}
