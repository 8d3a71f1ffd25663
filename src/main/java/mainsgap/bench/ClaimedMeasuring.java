package mainsgap.bench;

import mainsgap.arming.Measuring;
import mainsgap.signal.Capture;
import mainsgap.transfer.DecisionRule;
import mainsgap.transfer.DeclaredClaim;
import mainsgap.transfer.Judgement;
import mainsgap.transfer.MeasuringTask;
import mainsgap.transfer.Outcome;
import mainsgap.transfer.TransferMeasurement;
import mainsgap.transfer.TrialVerdict;
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
