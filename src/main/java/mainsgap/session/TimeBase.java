package mainsgap.session;

import mainsgap.signal.TimeAxis;
import org.jspecify.annotations.Nullable;

/**
 * The accuracy of the clock that took a capture: no capture file tells it.
 *
 * @param statedPpm as the maker of the instrument states it; null where nobody says
 */
record TimeBase(@Nullable Double statedPpm) {
  /** Stated accuracies of oscilloscope time bases go from 1 to 100 ppm: common practice. */
  private static final double ASSUMED_PPM = 100;

  /**
   * An axis on this clock.
   *
   * @param printPpm what the print of the times leaves open
   */
  TimeAxis axis(double firstSeconds, double intervalSeconds, int length, double printPpm) {
    double ppm = statedPpm == null ? ASSUMED_PPM : statedPpm;
    return new TimeAxis(
        firstSeconds, intervalSeconds, length, Math.max(ppm, printPpm), statedPpm == null);
  }
}
