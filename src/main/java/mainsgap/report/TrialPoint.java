package mainsgap.report;

import java.util.Optional;
import mainsgap.session.LoggedTrial;
import mainsgap.transfer.outcome.Verdict;
import org.jspecify.annotations.Nullable;

/**
 * One trial as figures show it.
 *
 * @param number in its session
 * @param kind what it shows
 * @param isSetAside whether it no longer counts
 * @param millis the transfer time; without a return, what the record shows at least; null where the
 *     trial was refused
 * @param uncertaintyMillis half-width of its 95 % interval; without an interruption, the shortest
 *     gap that would have been seen
 * @param residualPercent the residual disturbance over the first cycle; null where not known
 * @param distortionPercent the distortion of the settled supply; null where not known
 * @param overshootPercent above nominal peak; null where not known
 */
public record TrialPoint(
    int number,
    Kind kind,
    boolean isSetAside,
    @Nullable Double millis,
    @Nullable Double uncertaintyMillis,
    @Nullable Double residualPercent,
    @Nullable Double distortionPercent,
    @Nullable Double overshootPercent) {

  /** What a trial shows; each has a shape of its own. */
  public enum Kind {
    /** A gap with both ends that passed. */
    PASSED("passed"),
    /** A gap with both ends that failed. */
    FAILED("failed"),
    /** A gap with both ends that is neither shown to be within the claim nor not to be. */
    INCONCLUSIVE("inconclusive"),
    /** A gap with both ends and nothing to judge it by. */
    NOT_JUDGED("not judged"),
    /** No return in the record: the time is at least as long. */
    NO_RETURN("no return: at least"),
    /** The load saw no interruption. */
    NO_INTERRUPTION("no interruption"),
    /** The capture carries no measurement. */
    REFUSED("refused");

    private final String words;

    Kind(String words) {
      this.words = words;
    }

    /** The kind for people. */
    public String words() {
      return words;
    }
  }

  /** The trial that a session holds. */
  public static TrialPoint of(LoggedTrial trial) {
    boolean hasNoReturn = trial.number("transferTimeAtLeastMs").isPresent();
    return new TrialPoint(
        trial.number(),
        kind(trial, hasNoReturn),
        trial.setAsideReason() != null,
        figure(trial, hasNoReturn ? "transferTimeAtLeastMs" : "transferTimeMs"),
        figure(trial, "expandedUncertaintyMs"),
        figure(trial, "residualPercent"),
        figure(trial, "thdAfterPercent"),
        figure(trial, "peakOvershootPercent"));
  }

  /** Whether it has a place on a time axis and counts. */
  boolean stands() {
    return !isSetAside && millis != null;
  }

  private static Kind kind(LoggedTrial trial, boolean hasNoReturn) {
    if (trial.isRefused()) {
      return Kind.REFUSED;
    }
    if (hasNoReturn) {
      return Kind.NO_RETURN;
    }
    if (Boolean.FALSE.equals(trial.figures().get("interruption"))) {
      return Kind.NO_INTERRUPTION;
    }
    Optional<Verdict> verdict = trial.verdict();
    if (verdict.isEmpty()) {
      return Kind.NOT_JUDGED;
    }
    return switch (verdict.get()) {
      case PASS -> Kind.PASSED;
      case FAIL -> Kind.FAILED;
      case INCONCLUSIVE -> Kind.INCONCLUSIVE;
    };
  }

  private static @Nullable Double figure(LoggedTrial trial, String name) {
    return trial.number(name).isPresent() ? (Double) trial.number(name).getAsDouble() : null;
  }
}
