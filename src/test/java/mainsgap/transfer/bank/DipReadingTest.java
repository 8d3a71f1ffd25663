package mainsgap.transfer.bank;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;

import mainsgap.signal.Event;
import mainsgap.signal.TimeAxis;
import mainsgap.transfer.outcome.MeasuringTask;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class DipReadingTest {
  private static final int CYCLE = 6000;
  private static final int CYCLES = 12;

  /**
   * Lowest Urms(1/2) and duration of a clean gap in a pure sine, threshold 90 %, hysteresis 2 %:
   * worked out apart from this program by numerical integration from the definition in IEC
   * 61000-4-30; 50 Hz, 4 ms, 135 degrees in closed form.
   */
  @ParameterizedTest
  @CsvFileSource(
      resources = "/mainsgap/transfer/urms-of-clean-gaps.csv",
      useHeadersInDisplayName = true)
  void cleanGapReadsAsTheStandardsMeterDoes(
      double hertz, double gapMillis, double lossDegrees, double lowestPercent, double millis) {
    MeasuringTask task = new MeasuringTask(Event.LOSS, 230, hertz);
    TimeAxis time = new TimeAxis(0, 1 / (hertz * CYCLE), CYCLES * CYCLE, 0);

    DipReading reading =
        DipReading.of(
            sineWithGap(task, 4 + lossDegrees / 360, gapMillis * 1e-3 * hertz), time, 0, task);

    assertAll(
        () -> assertEquals(lowestPercent, reading.residualPercent(), 0.06),
        () -> assertEquals(millis, reading.millis(), 0.04));
  }

  private static double[] sineWithGap(MeasuringTask task, double fromCycle, double gapCycles) {
    double[] volts = new double[CYCLES * CYCLE];
    for (int i = 0; i < volts.length; i++) {
      double cycle = (i + 0.5) / CYCLE;
      boolean dead = cycle >= fromCycle && cycle < fromCycle + gapCycles;
      volts[i] = dead ? 0 : task.nominalPeakVolts() * Math.sin(2 * Math.PI * cycle);
    }
    return volts;
  }
}
