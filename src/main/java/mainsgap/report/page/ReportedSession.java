package mainsgap.report.page;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import mainsgap.report.AlignedTrace;
import mainsgap.report.TrialPoint;
import mainsgap.report.UnitSeries;
import mainsgap.session.LoggedTrial;
import mainsgap.session.Session;
import mainsgap.session.SessionReader;
import mainsgap.signal.Capture;
import mainsgap.signal.TimeAxis;
import mainsgap.waiting.StopRequest;

/** A session all of whose seals were found intact, with what its page shows of the captures. */
public final class ReportedSession {
  /** More are hard to tell apart on paper. */
  static final int MOST_TRACES = 4;

  private final Session session;
  private final List<AlignedTrace> traces;
  private final List<TimeAxis> axes;

  /** Of a session whose seals hold. */
  ReportedSession(Session session, List<AlignedTrace> traces, List<TimeAxis> axes) {
    this.session = session;
    this.traces = List.copyOf(traces);
    this.axes = List.copyOf(axes);
  }

  /** The session as it was read. */
  public Session session() {
    return session;
  }

  /** Of the longest transfers that stand, in the order of the trials. */
  List<AlignedTrace> traces() {
    return traces;
  }

  /** How the captures were sampled: one for each way, in their order. */
  List<TimeAxis> axes() {
    return axes;
  }

  /**
   * Holds every raw capture against its seal, one at a time; opening the reader did so with the
   * entries.
   *
   * @throws mainsgap.session.SessionException with a sentence, if a seal is broken
   * @throws mainsgap.waiting.StoppedException as soon as {@code stop} is requested
   */
  public static ReportedSession read(SessionReader reader, StopRequest stop) {
    Session session = reader.session();
    List<LoggedTrial> longest = longest(session);
    Set<Integer> wanted =
        longest.stream().map(LoggedTrial::number).collect(Collectors.toUnmodifiableSet());
    String unit = UnitSeries.namesOf(List.of(session.header())).get(0);
    List<AlignedTrace> traces = new ArrayList<>();
    Map<String, TimeAxis> axes = new LinkedHashMap<>();
    for (LoggedTrial trial : session.trials()) {
      stop.throwIfRequested();
      Capture capture = reader.capture(trial.number());
      axes.putIfAbsent(SpecimenFacts.sampling(capture.time()), capture.time());
      if (wanted.contains(trial.number())) {
        traces.add(AlignedTrace.of(unit, session.header(), trial, capture));
      }
    }
    return new ReportedSession(session, traces, List.copyOf(axes.values()));
  }

  private static List<LoggedTrial> longest(Session session) {
    return session.standingTrials().stream()
        .filter(trial -> trial.number("lossMs").isPresent())
        .sorted(Comparator.comparingDouble(ReportedSession::millis).reversed())
        .limit(MOST_TRACES)
        .toList();
  }

  private static double millis(LoggedTrial trial) {
    Double millis = TrialPoint.of(trial).millis();
    return millis == null ? 0 : millis;
  }
}
