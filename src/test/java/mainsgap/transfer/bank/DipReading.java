package mainsgap.transfer.bank;

import mainsgap.signal.Capture;
import mainsgap.signal.CycleRms;
import mainsgap.signal.TimeAxis;
import mainsgap.transfer.outcome.MeasuringTask;

/**
 * What a power quality meter reads: the time for which Urms(1/2) of IEC 61000-4-30 lies in a dip,
 * with a threshold of 90 % of nominal and a hysteresis of 2 % (values that a meter maker's note
 * calls typical). Windows start at the first zero crossing and run freely through the gap.
 *
 * @param millis the duration of the first dip, 0 where there is none
 * @param residualPercent the lowest Urms(1/2) in per cent of nominal
 */
record DipReading(double millis, double residualPercent) {
  private static final double THRESHOLD_SHARE = 0.9;
  private static final double HYSTERESIS_SHARE = 0.02;

  static DipReading of(Capture capture, MeasuringTask task) {
    double[] volts = capture.output().volts();
    return of(volts, capture.time(), firstCrossing(volts, capture.time(), task), task);
  }

  static DipReading of(double[] volts, TimeAxis time, double firstSample, MeasuringTask task) {
    double cycleSamples = task.cycleSeconds() / time.intervalSeconds();
    double[] rms = CycleRms.refreshedEachHalfCycle(volts, firstSample, volts.length, cycleSamples);
    int start = -1;
    int end = -1;
    double lowest = Double.POSITIVE_INFINITY;
    for (int k = 0; k < rms.length; k++) {
      double share = rms[k] / task.nominalVolts();
      lowest = Math.min(lowest, share);
      if (start < 0 && share < THRESHOLD_SHARE) {
        start = k;
      } else if (start >= 0 && end < 0 && share >= THRESHOLD_SHARE + HYSTERESIS_SHARE) {
        end = k;
      }
    }
    int halves = start < 0 ? 0 : (end < 0 ? rms.length : end) - start;
    return new DipReading(halves * task.cycleSeconds() / 2 * 1e3, 100 * lowest);
  }

  /** The first sample at or above zero after a quarter of a cycle that was below it. */
  private static double firstCrossing(double[] volts, TimeAxis time, MeasuringTask task) {
    int quarter = (int) (task.cycleSeconds() / 4 / time.intervalSeconds());
    int below = 0;
    for (int i = 0; i < volts.length; i++) {
      if (volts[i] >= 0 && below >= quarter) {
        return i;
      }
      below = volts[i] < 0 ? below + 1 : 0;
    }
    return 0;
  }
}
