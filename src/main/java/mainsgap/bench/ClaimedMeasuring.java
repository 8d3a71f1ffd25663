package mainsgap.bench;

import mainsgap.arming.Measuring;
import mainsgap.signal.Capture;
import mainsgap.transfer.TransferMeasurement;
import mainsgap.transfer.claim.DecisionRule;
import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.transfer.claim.TrialVerdict;
import mainsgap.transfer.outcome.Judgement;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.Outcome;
import org.jspecify.annotations.Nullable;

/**
 * Measures for a task, and judges against the declared claim, by the agreed rule, where there is
 * one.
 */
record ClaimedMeasuring(MeasuringTask task, @Nullable DeclaredClaim claim, DecisionRule rule)
    implements Measuring {

  @Override
  public Outcome measure(Capture capture) {
    return TransferMeasurement.measure(capture, task);
  }

  @Override
  public @Nullable Judgement judge(Outcome outcome) {
    return claim == null ? null : TrialVerdict.judge(outcome, claim, rule).orElse(null);
  }
}
