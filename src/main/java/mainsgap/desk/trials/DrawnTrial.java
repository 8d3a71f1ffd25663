package mainsgap.desk.trials;

import mainsgap.bench.TrialReport;
import mainsgap.signal.Capture;
import mainsgap.transfer.FittedSupplies;
import mainsgap.transfer.MeasuringTask;
import mainsgap.transfer.Outcome;

/**
 * The trial that is drawn: one at a time, as it holds its raw capture.
 *
 * @param trial as it was logged
 * @param capture as the instrument gave it
 * @param supplies fitted before and after
 */
record DrawnTrial(TrialReport trial, Capture capture, FittedSupplies supplies) {

  /** Fits the supplies, which takes as long as a measurement. */
  static DrawnTrial of(TrialReport trial, Capture capture, MeasuringTask task) {
    FittedSupplies supplies =
        trial.outcome().kind() == Outcome.Kind.REFUSED
            ? FittedSupplies.NONE
            : FittedSupplies.of(capture, task);
    return new DrawnTrial(trial, capture, supplies);
  }
}
