package mainsgap.transfer.bank;

import mainsgap.signal.Capture;
import mainsgap.transfer.outcome.MeasuringTask;

/**
 * What a level threshold reads: the longest time for which the voltage stays within 10 % of nominal
 * peak (common practice on a screen with two cursors).
 */
final class LevelReading {
  private static final double LEVEL_SHARE_OF_PEAK = 0.1;

  private LevelReading() {}

  /** The gap in milliseconds. */
  static double millis(Capture capture, MeasuringTask task) {
    double level = LEVEL_SHARE_OF_PEAK * task.nominalPeakVolts();
    int longest = 0;
    int run = 0;
    for (int i = 0; i < capture.time().length(); i++) {
      run = Math.abs(capture.output().voltsAt(i)) < level ? run + 1 : 0;
      longest = Math.max(longest, run);
    }
    return longest * capture.time().intervalSeconds() * 1e3;
  }
}
