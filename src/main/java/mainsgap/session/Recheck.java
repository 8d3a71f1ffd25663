package mainsgap.session;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import mainsgap.signal.Capture;
import mainsgap.transfer.claim.DecisionRule;
import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.transfer.outcome.Figures;
import mainsgap.transfer.outcome.Judgement;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.Outcome;
import org.jspecify.annotations.Nullable;

/**
 * Measures the raw captures of a session again.
 *
 * @param session what was rechecked, under intact seals
 * @param differences every figure that came out otherwise than it is stored
 */
public record Recheck(Session session, List<Difference> differences) {

  /** Measures a capture. */
  @FunctionalInterface
  public interface Measurement {
    /** The outcome of {@code capture}; the same one each time. */
    Outcome measure(Capture capture, MeasuringTask task);
  }

  /** Judges an outcome. */
  @FunctionalInterface
  public interface Judging {
    /** What {@code outcome} says of {@code claim} by {@code rule}, where it is judged. */
    Optional<Judgement> judge(Outcome outcome, DeclaredClaim claim, DecisionRule rule);
  }

  /**
   * A figure that came out otherwise.
   *
   * @param stored null where the session has no value
   * @param found null where there is no value now
   */
  public record Difference(
      int trialNumber, String figure, @Nullable Object stored, @Nullable Object found) {

    /** The difference in words. */
    public String sentence() {
      return "trial "
          + trialNumber
          + ", "
          + figure
          + ": stored "
          + Objects.requireNonNullElse(stored, "nothing")
          + ", now "
          + Objects.requireNonNullElse(found, "nothing");
    }
  }

  /** Takes its own copy. */
  public Recheck {
    differences = List.copyOf(differences);
  }

  /** Checks the seal of every capture and measures it again, one at a time. */
  public static Recheck of(SessionReader reader, Measurement measurement, Judging judging) {
    Session session = reader.session();
    SessionHeader header = session.header();
    DecisionRule rule = header.decisionRule();
    List<Difference> differences = new ArrayList<>();
    for (LoggedTrial trial : session.trials()) {
      Outcome outcome = measurement.measure(reader.capture(trial.number()), header.task());
      DeclaredClaim claim = header.claim();
      Judgement judgement = claim == null ? null : judging.judge(outcome, claim, rule).orElse(null);
      compare(trial, Figures.of(outcome, judgement, header.task().nominalVolts()), differences);
    }
    return new Recheck(session, differences);
  }

  /**
   * Only what the session stores is compared: an older program knew fewer figures, and stored those
   * of a return's cleanness, and of other channels, as nothing, all of them.
   */
  private static void compare(
      LoggedTrial trial, Map<String, @Nullable Object> now, List<Difference> differences) {
    Set<String> unknown = new HashSet<>();
    for (List<String> group :
        List.of(Figures.CLEANNESS_NAMES, Figures.OTHER_CHANNEL_NAMES, Figures.FURTHER_NAMES)) {
      if (group.stream().allMatch(name -> trial.figures().get(name) == null)) {
        unknown.addAll(group);
      }
    }
    trial
        .figures()
        .forEach(
            (figure, stored) -> {
              Object found = now.get(figure);
              if (!unknown.contains(figure) && !Objects.equals(stored, found)) {
                differences.add(new Difference(trial.number(), figure, stored, found));
              }
            });
  }
}
