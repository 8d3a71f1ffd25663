package mainsgap.transfer.bank;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;

import mainsgap.signal.Event;
import mainsgap.signal.TimeAxis;
import mainsgap.transfer.MeasuringTask;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DipReadingTest {
  private static final int CYCLE = 6000;
  private static final int CYCLES = 12;

  /**
   * Lowest Urms(1/2) and duration of a clean gap in a pure sine, computed with NumPy from the
   * definition in IEC 61000-4-30.
   */
  @ParameterizedTest
  @CsvSource({
    "50,  4,   0, 92.0,  0",
    "50,  4,  45, 81.0, 20",
    "50,  4,  90, 86.8, 20",
    "50,  4, 135, 97.1,  0",
    "50,  8,   0, 72.4, 20",
    "50,  8,  45, 73.8, 20",
    "50,  8,  90, 82.2, 20",
    "50,  8, 135, 80.9, 20",
    "50, 10,   0, 70.7, 20",
    "50, 10,  45, 70.7, 20",
    "50, 10,  90, 70.7, 30",
    "50, 10, 135, 70.7, 20",
    "50, 20,   0,  0.0, 30",
    "50, 20,  45, 21.3, 30",
    "50, 20,  90, 50.0, 40",
    "50, 20, 135, 21.3, 30",
    "60,  4,   0, 87.7, 16.7",
    "60,  4,  45, 77.6, 16.7",
    "60,  4,  90, 86.6, 16.7",
    "60,  4, 135, 95.8,  0",
    "60, 12.5,   0, 50.0, 25",
    "60, 12.5,  45, 30.1, 25",
    "60, 12.5,  90, 50.0, 25",
    "60, 12.5, 135, 67.4, 16.7"
  })
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
