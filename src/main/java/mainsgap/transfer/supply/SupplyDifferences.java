package mainsgap.transfer.supply;

import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.Supplies;

/** Compares the fitted supplies before and after an event. */
public final class SupplyDifferences {
  private SupplyDifferences() {}

  /** The steps from {@code before} to {@code after}, the phases taken at {@code seconds}. */
  public static Supplies between(Supply before, Supply after, double seconds, MeasuringTask task) {
    double phase = after.model().angleDegreesAt(seconds) - before.model().angleDegreesAt(seconds);
    return new Supplies(
        before.model().frequencyHertz(),
        1e3 * (after.model().frequencyHertz() - before.model().frequencyHertz()),
        100
            * (after.model().amplitudeVolts() - before.model().amplitudeVolts())
            / task.nominalPeakVolts(),
        wrapped(phase));
  }

  /** An angle from -180 (exclusive) to 180 (inclusive) degrees. */
  public static double wrapped(double degrees) {
    double turned = degrees - 360 * Math.floor(degrees / 360);
    return turned > 180 ? turned - 360 : turned;
  }
}
