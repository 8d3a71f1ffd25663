package mainsgap.report.page;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import mainsgap.report.RankBy;
import mainsgap.report.TrialStrips;
import mainsgap.report.UnitSeries;

/**
 * The report of one or many sessions: one page of HTML that holds its looks and its figures, runs
 * nothing and fetches nothing.
 *
 * @param sessions in the order of the page
 * @param madeBy the version of the program that makes the page
 * @param madeAt when it is made
 */
public record ReportPage(List<ReportedSession> sessions, String madeBy, Instant madeAt) {

  /**
   * Takes its own copy.
   *
   * @throws IllegalArgumentException if there is no session
   */
  public ReportPage {
    sessions = List.copyOf(sessions);
    if (sessions.isEmpty()) {
      throw new IllegalArgumentException("a report needs at least one session, found none");
    }
  }

  /** The page, to be written as UTF-8. */
  public String html() {
    List<UnitSeries> series =
        UnitSeries.of(sessions.stream().map(ReportedSession::session).toList());
    List<SessionPart> parts = new ArrayList<>();
    for (int i = 0; i < series.size(); i++) {
      parts.add(new SessionPart(i + 1, series.get(i), sessions.get(i)));
    }
    return PageTemplate.filled("page", new Whole(parts, madeBy, PageTime.of(madeAt)));
  }

  /** What the template of the whole page asks for. */
  record Whole(List<SessionPart> sessions, String madeBy, String madeAt) {
    private static final int FRAME_PIXELS = 260;

    /** A strip with its words. */
    private static final int STRIP_PIXELS = 75;

    String title() {
      return sessions.size() == 1
          ? "Transfer time of " + sessions.get(0).name()
          : "Transfer times of " + sessions.size() + " sessions";
    }

    boolean simulated() {
      return sessions.stream().anyMatch(SessionPart::simulated);
    }

    boolean several() {
      return sessions.size() > 1;
    }

    /** The trials of all sessions on one axis; nothing where none was measured. */
    List<String> drawings() {
      List<UnitSeries> series = sessions.stream().map(SessionPart::series).toList();
      return sessions.stream().anyMatch(SessionPart::isMeasured)
          ? List.of(
              PageFigure.drawn(
                  TrialStrips.of(series, RankBy.LARGEST),
                  FRAME_PIXELS + STRIP_PIXELS * sessions.size(),
                  "all-"))
          : List.of();
    }
  }
}
