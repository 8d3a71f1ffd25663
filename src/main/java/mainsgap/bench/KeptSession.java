package mainsgap.bench;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import mainsgap.session.Addition;
import mainsgap.session.Session;
import mainsgap.session.SessionHeader;
import mainsgap.session.SessionLog;
import mainsgap.session.SessionReader;

/**
 * What a session file holds when no series writes it, in the words of a series.
 *
 * @param session what the file tells, but for the captures
 * @param trials all of them in their order
 * @param figures of those that stand
 */
public record KeptSession(Session session, List<TrialReport> trials, RunningFigures figures) {

  /** Takes its own copy. */
  public KeptSession {
    trials = List.copyOf(trials);
  }

  /**
   * Reads the session, all seals checked.
   *
   * @throws mainsgap.session.SessionException with a sentence where it cannot be read
   */
  public static KeptSession read(Path file) {
    try (SessionReader reader = SessionReader.open(file)) {
      return of(reader.session());
    }
  }

  /**
   * Adds to the session what a person wants to add once the series is over; it is durable on
   * return.
   *
   * @throws BenchException with a sentence where it does not fit
   * @throws mainsgap.session.SessionException with a sentence where the file cannot be written
   */
  public static KeptSession add(Path file, Addition addition, Instant at) {
    try (SessionLog log = SessionLog.resume(file)) {
      addition
          .whyNot(log)
          .ifPresent(
              why -> {
                throw new BenchException(why);
              });
      String unused = addition.appendTo(log, at);
    }
    return read(file);
  }

  static KeptSession of(Session session) {
    SessionHeader header = session.header();
    List<TrialReport> trials = session.trials().stream().map(TrialReport::of).toList();
    return new KeptSession(
        session, trials, RunningFigures.of(trials, header.claim(), header.decisionRule()));
  }
}
