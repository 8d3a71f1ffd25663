package mainsgap.arming;

import mainsgap.scope.CapturePlan;
import mainsgap.transfer.outcome.MeasuringTask;

/**
 * A series as data.
 *
 * @param capture the settings of each capture
 * @param task what is measured in it
 * @param trials how many measured trials are wanted, at least 1
 * @param pace the limits of the waits and repeats
 * @param timing where on the wave a commanded switch opens
 */
public record LoopPlan(
    CapturePlan capture, MeasuringTask task, int trials, Pace pace, SwitchTiming timing) {

  /** Checks that there is something to do. */
  public LoopPlan {
    if (trials < 1) {
      throw new IllegalArgumentException("a series has at least 1 trial, found " + trials);
    }
  }
}
