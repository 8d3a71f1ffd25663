package mainsgap.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import mainsgap.session.LoggedTrial;
import mainsgap.session.SessionHeader;
import mainsgap.session.SessionReader;
import mainsgap.waiting.StopRequest;
import org.jspecify.annotations.Nullable;

/** Measures every raw capture of a session again and names each figure that comes out otherwise. */
final class Recheck {
  /**
   * Two machines may round the last bits of a sine or a square root differently; no change of the
   * measurement hides below this.
   */
  private static final double SAME_WITHIN = 1e-9;

  private Recheck() {}

  /**
   * A figure that differs.
   *
   * @param trial its number
   * @param figure its name
   * @param logged what the session holds
   * @param measured what came out now
   */
  record Difference(int trial, String figure, @Nullable Object logged, @Nullable Object measured) {}

  /** All differences, in the order of the trials. */
  static List<Difference> of(SessionReader reader, StopRequest stop) {
    List<Difference> differences = new ArrayList<>();
    SessionHeader header = reader.session().header();
    for (LoggedTrial trial : reader.session().trials()) {
      stop.throwIfRequested();
      JudgedCapture again =
          JudgedCapture.of(reader.capture(trial.number()), header.task(), header.claim());
      differences.addAll(between(trial.number(), trial.figures(), again.figures()));
    }
    return differences;
  }

  /** Figures that an older version of the program did not log yet are not compared. */
  static List<Difference> between(
      int trial, Map<String, @Nullable Object> logged, Map<String, @Nullable Object> measured) {
    List<Difference> differences = new ArrayList<>();
    measured.forEach(
        (figure, now) -> {
          if (logged.containsKey(figure) && !isSame(logged.get(figure), now)) {
            differences.add(new Difference(trial, figure, logged.get(figure), now));
          }
        });
    return differences;
  }

  private static boolean isSame(@Nullable Object logged, @Nullable Object measured) {
    if (logged instanceof Number one && measured instanceof Number other) {
      double larger = Math.max(Math.abs(one.doubleValue()), Math.abs(other.doubleValue()));
      return Math.abs(one.doubleValue() - other.doubleValue()) <= SAME_WITHIN * Math.max(1, larger);
    }
    return Objects.equals(logged, measured);
  }
}
