package mainsgap.cli;

import java.util.Map;
import mainsgap.signal.Capture;
import mainsgap.transfer.claim.DecisionRule;
import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.transfer.claim.TrialVerdict;
import mainsgap.transfer.outcome.Figures;
import mainsgap.transfer.outcome.Judgement;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Verdict;
import org.jspecify.annotations.Nullable;

/**
 * A capture that was measured and judged.
 *
 * @param judgement null where nothing is declared, or nothing was measured
 * @param figures by the names of {@link Figures}
 */
record JudgedCapture(
    Outcome outcome, @Nullable Judgement judgement, Map<String, @Nullable Object> figures) {

  /** Measures {@code capture} and holds it against {@code claim}. */
  static JudgedCapture of(
      Capture capture, MeasuringTask task, @Nullable DeclaredClaim claim, DecisionRule rule) {
    return of(SteadyMeasurement.measure(capture, task), task, claim, rule);
  }

  /** Holds {@code outcome} against {@code claim}. */
  static JudgedCapture of(
      Outcome outcome, MeasuringTask task, @Nullable DeclaredClaim claim, DecisionRule rule) {
    Judgement judgement =
        claim == null ? null : TrialVerdict.judge(outcome, claim, rule).orElse(null);
    return new JudgedCapture(
        outcome, judgement, Figures.of(outcome, judgement, task.nominalVolts()));
  }

  boolean isRefused() {
    return outcome.kind() == Outcome.Kind.REFUSED;
  }

  boolean hasPassed() {
    return judgement != null && judgement.verdict() == Verdict.PASS;
  }
}
