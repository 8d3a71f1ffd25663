package mainsgap.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SpectrumTest {
  private static final int ORDERS = 40;

  /** Samples of a wave that takes its time in cycles, a part of a cycle after its zero. */
  private static Spectrum spectrum(
      double sampleRateHertz, double hertz, int cycles, DoubleUnaryOperator wave) {
    int n = (int) (sampleRateHertz * (cycles + 1) / hertz);
    TimeAxis time = new TimeAxis(0, 1 / sampleRateHertz, n, 0);
    double[] volts = new double[n];
    for (int i = 0; i < n; i++) {
      volts[i] = wave.applyAsDouble(i * hertz / sampleRateHertz + 0.137);
    }
    return Spectrum.of(volts, time, 3, cycles, hertz, ORDERS);
  }

  private static double sine(double cycles) {
    return Math.sin(2 * Math.PI * cycles);
  }

  /** By hand: 3 % of the fundamental, in whatever way the samples fall in a cycle. */
  @ParameterizedTest
  @CsvSource({
    "10000, 50, 10",
    "20000, 49.87, 10",
    "100000, 60.03, 12",
    "1000000, 50.01, 10",
    "100000, 50, 3"
  })
  void threePerCentOfTheFifthIsADistortionOfThreePerCent(
      double sampleRateHertz, double hertz, int cycles) {
    Spectrum found =
        spectrum(
            sampleRateHertz, hertz, cycles, t -> 325 * (sine(t) + 0.03 * sine(5 * t + 0.2)) + 2);
    assertEquals(3, found.lineDistortionPercent(), 0.002);
    assertEquals(3, found.subgroupDistortionPercent(), 0.004);
    assertEquals(3, found.groupDistortionPercent(), 0.008);
    assertEquals(2, found.meanVolts(), 0.002);
    assertEquals(325 / Math.sqrt(2), found.lineVolts(1), 0.005);
  }

  /**
   * Source: the Fourier series 4/pi sum sin(kx)/k over odd k; up to order 40 the sum of 1/k^2 gives
   * 47.03 %. All orders together give the textbook's root of (pi^2 / 8 - 1) = 48.34 %.
   */
  @ParameterizedTest
  @CsvSource({"100000, 47.03", "1000000, 47.03"})
  void squareWaveHasTheDistortionOfItsSeries(double sampleRateHertz, double percent) {
    double squares = 0;
    for (int k = 3; k <= ORDERS; k += 2) {
      squares += 1.0 / (k * k);
    }
    assertEquals(percent, 100 * Math.sqrt(squares), 0.005);
    Spectrum found = spectrum(sampleRateHertz, 50, 10, t -> t - Math.floor(t) < 0.5 ? 230 : -230);
    assertEquals(percent, found.lineDistortionPercent(), 0.05);
    assertEquals(percent, found.subgroupDistortionPercent(), 0.05);
  }

  /**
   * Source: IEC 61000-4-7: a group takes the lines half-way to the next harmonic at half weight; a
   * subgroup (from memory) only the lines next to the harmonic.
   */
  @ParameterizedTest
  @CsvSource({
    // hertz of a tone of 1 V RMS, group 3, subgroup 3
    "150, 1, 1",
    "145, 1, 1",
    "155, 1, 1",
    "160, 1, 0",
    "130, 1, 0",
    "180, 0, 0",
    "120, 0, 0",
    "125, 0.70710678, 0",
    "175, 0.70710678, 0",
  })
  void groupsTakeTheLinesOfTheStandard(double toneHertz, double group, double subgroup) {
    Spectrum found =
        spectrum(20_000, 50, 10, t -> 100 * sine(t) + Math.sqrt(2) * sine(t * toneHertz / 50));
    assertEquals(group, found.groupVolts(3), 1e-3);
    assertEquals(subgroup, found.subgroupVolts(3), 1e-3);
  }

  @Test
  void aSampleRateThatDoesNotCarryAllOrdersGivesFewer() {
    assertEquals(16, spectrum(2_000, 50, 10, SpectrumTest::sine).orders());
  }

  @Test
  void aWindowBeyondTheSamplesIsRefused() {
    TimeAxis time = new TimeAxis(0, 1e-3, 100, 0);
    assertThrows(
        IllegalArgumentException.class, () -> Spectrum.of(new double[100], time, 0, 5, 50, ORDERS));
  }
}
