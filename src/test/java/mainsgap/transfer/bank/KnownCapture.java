package mainsgap.transfer.bank;

import mainsgap.signal.Capture;
import mainsgap.transfer.MeasuringTask;

/**
 * A generated capture with the truth that made it.
 *
 * @param lossSeconds the first opening
 * @param returnSeconds the instant from which the load is fed without a break
 * @param noiseShare the noise's standard deviation as a share of nominal peak
 */
public record KnownCapture(
    Capture capture,
    MeasuringTask task,
    double lossSeconds,
    double returnSeconds,
    double noiseShare) {

  /** Return minus loss. */
  public double transferMillis() {
    return (returnSeconds - lossSeconds) * 1e3;
  }
}
