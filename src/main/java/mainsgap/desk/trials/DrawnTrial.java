package mainsgap.desk.trials;

import mainsgap.bench.TrialReport;
import mainsgap.desk.pictures.TracePane;
import mainsgap.desk.trace.TraceScene;
import mainsgap.signal.Capture;
import mainsgap.transfer.FittedSupplies;
import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.Outcome;
import org.jspecify.annotations.Nullable;

/**
 * The trial that is drawn: one at a time, as its picture holds every sample.
 *
 * @param trial as it was logged
 * @param scene its raw capture with all that is marked on it
 */
record DrawnTrial(TrialReport trial, TraceScene scene) {

  /** Fits the supplies and reads all samples, which takes as long as a measurement. */
  static DrawnTrial of(
      TrialReport trial, Capture capture, MeasuringTask task, @Nullable DeclaredClaim claim) {
    FittedSupplies supplies =
        trial.outcome().kind() == Outcome.Kind.REFUSED
            ? FittedSupplies.NONE
            : FittedSupplies.of(capture, task);
    return new DrawnTrial(trial, TracePane.sceneOf(capture, trial.outcome(), supplies, claim));
  }
}
