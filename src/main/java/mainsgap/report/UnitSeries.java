package mainsgap.report;

import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import mainsgap.session.LoggedTrial;
import mainsgap.session.Session;
import mainsgap.session.SessionHeader;
import mainsgap.transfer.claim.SeriesSummary;
import mainsgap.transfer.claim.SeriesVerdict;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.Outcome;

/**
 * One session as figures show it: a unit, its trials, and what they say together.
 *
 * @param name the unit's name, told apart from those of the other sessions shown
 * @param header what holds for the whole session
 * @param points every trial, refused and set-aside ones too
 * @param summary of the trials that stand
 */
public record UnitSeries(
    String name, SessionHeader header, List<TrialPoint> points, SeriesSummary summary) {

  /** Takes its own copy. */
  public UnitSeries {
    points = List.copyOf(points);
  }

  /** The sessions in their order, each under a name that tells it apart. */
  public static List<UnitSeries> of(List<Session> sessions) {
    List<String> names = UnitNames.of(sessions.stream().map(Session::header).toList());
    return IntStream.range(0, sessions.size())
        .mapToObj(i -> of(names.get(i), sessions.get(i)))
        .toList();
  }

  /** Names for the units of sessions, each told apart from the others. */
  public static List<String> namesOf(List<SessionHeader> headers) {
    return UnitNames.of(headers);
  }

  private static UnitSeries of(String name, Session session) {
    SessionHeader header = session.header();
    List<Outcome> standing = session.standingTrials().stream().map(LoggedTrial::outcome).toList();
    return new UnitSeries(
        name,
        header,
        session.trials().stream().map(TrialPoint::of).toList(),
        SeriesVerdict.judge(standing, header.claim(), header.decisionRule()));
  }

  /** What was measured. */
  public MeasuringTask task() {
    return header.task();
  }

  /** The points that stand and have a time. */
  List<TrialPoint> standing() {
    return points.stream().filter(TrialPoint::stands).toList();
  }

  /** How many trials were refused and not set aside. */
  public int refused() {
    return (int)
        points.stream()
            .filter(point -> !point.isSetAside() && point.kind() == TrialPoint.Kind.REFUSED)
            .count();
  }

  /** How many trials were set aside. */
  public int setAside() {
    return (int) points.stream().filter(TrialPoint::isSetAside).count();
  }

  /** Whether the largest time is only known to be at least so long. */
  public boolean isLargestAtLeast() {
    return points.stream()
        .anyMatch(
            point ->
                point.stands()
                    && point.kind() == TrialPoint.Kind.NO_RETURN
                    && Objects.equals(point.millis(), summary.maxMillis()));
  }
}
