package mainsgap.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CycleRmsTest {
  private static final int CYCLE = 2000;

  @Test
  void steadySineHasItsEffectiveValueInEveryWindow() {
    double[] rms = CycleRms.refreshedEachHalfCycle(sineWithGap(0, 0), 0, 10 * CYCLE, CYCLE);

    assertEquals(19 - 1, rms.length);
    Arrays.stream(rms).forEach(one -> assertEquals(1, one, 1e-12));
  }

  /**
   * Within one window {@code U / Un = sqrt(1 - (1/T) integral over the gap of 2 sin^2(wt) dt)}: the
   * integral in closed form.
   */
  @ParameterizedTest
  @CsvSource({"0, 0.2", "45, 0.3", "90, 0.1", "135, 0.25", "10, 0.5"})
  void gapWithinOneWindowFollowsTheClosedForm(double degrees, double gapCycles) {
    double start = degrees / 360;
    double end = start + gapCycles;
    double integral =
        gapCycles - (Math.sin(4 * Math.PI * end) - Math.sin(4 * Math.PI * start)) / (4 * Math.PI);

    double[] rms =
        CycleRms.refreshedEachHalfCycle(sineWithGap(4 + start, gapCycles), 0, 10 * CYCLE, CYCLE);

    assertEquals(Math.sqrt(1 - integral), rms[8], 1e-3);
  }

  @ParameterizedTest
  @CsvSource({"0", "17", "90", "143"})
  void halfACycleWithinOneWindowLeavesTheRootOfAHalf(double degrees) {
    double[] volts = sineWithGap(4 + degrees / 360, 0.5);

    double[] rms = CycleRms.refreshedEachHalfCycle(volts, 0, 10 * CYCLE, CYCLE);

    assertEquals(Math.sqrt(0.5), rms[8], 1e-3);
  }

  @Test
  void windowBeforeTheRecordIsCutOff() {
    double[] rms = CycleRms.refreshedEachHalfCycle(new double[] {3, 3, 3, 3}, -1, 4, 2);

    assertEquals(3, rms[0]);
  }

  @Test
  void noSamplesHaveNoRms() {
    assertEquals(0, CycleRms.of(new double[] {1}, 1, 1));
    assertEquals(0, CycleRms.refreshedEachHalfCycle(new double[3], 0, 3, 4).length);
  }

  @Test
  void cycleOfLessThanTwoSamplesIsRefused() {
    assertThrows(
        IllegalArgumentException.class,
        () -> CycleRms.refreshedEachHalfCycle(new double[4], 0, 4, 1));
  }

  /** Ten cycles of an effective value of 1, without the cycles of the gap. */
  private static double[] sineWithGap(double fromCycle, double gapCycles) {
    double[] volts = new double[10 * CYCLE];
    for (int i = 0; i < volts.length; i++) {
      double cycle = (i + 0.5) / CYCLE;
      boolean dead = cycle >= fromCycle && cycle < fromCycle + gapCycles;
      volts[i] = dead ? 0 : Math.sqrt(2) * Math.sin(2 * Math.PI * cycle);
    }
    return volts;
  }
}
