package mainsgap.signal;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * No numeric example of the IEEE 1057 fits is published that we know of: the vectors were computed
 * with NumPy's least squares from the formulas of the standard (from memory). The bounds are those
 * of Cramér and Rao for a real sine in white noise (amplitude from a published Fisher matrix, the
 * others from memory, checked by a Monte-Carlo run in NumPy).
 */
class SineFitTest {
  private static final double INTERVAL = 1 / 3200.0;

  /** 10 cos(2 pi 50 t - pi/6) + 1. */
  private static final double[] CLEAN =
      IntStream.range(0, 64)
          .mapToDouble(i -> 1 + 10 * Math.cos(2 * Math.PI * 50 * i * INTERVAL - Math.PI / 6))
          .toArray();

  @Test
  void threeParametersAtAWrongFrequencyGiveTheNearestSine() {
    SineFit fit = SineFit.threeParameters(CLEAN, INTERVAL, 48);

    assertAll(
        () -> assertEquals(9.378303, fit.cosineVolts(), 1e-6),
        () -> assertEquals(3.739729, fit.sineVolts(), 1e-6),
        () -> assertEquals(1.357344, fit.offsetVolts(), 1e-6));
  }

  @ParameterizedTest
  @CsvSource({"1, 50.0849943, 1e-7", "2, 50.0008739, 1e-7", "3, 49.99999999, 1e-8", "4, 50, 1e-9"})
  void fourParametersComeToTheFrequencyPassByPass(int passes, double hertz, double within) {
    SineFit fit = SineFit.fourParameters(CLEAN, INTERVAL, 48, passes);

    assertEquals(hertz, fit.frequencyHertz(), within);
  }

  @Test
  void fourParametersFindACleanSine() {
    SineFit fit = SineFit.fourParameters(CLEAN, INTERVAL, 48, 6);

    assertAll(
        () -> assertEquals(8.6602540, fit.cosineVolts(), 1e-7),
        () -> assertEquals(5, fit.sineVolts(), 1e-7),
        () -> assertEquals(1, fit.offsetVolts(), 1e-7));
  }

  @Test
  void threeParametersFindARoundedSine() {
    double[] rounded = {9.66, 10.66, 6.00, -1.59, -7.66, -8.66, -4.00, 3.59};

    SineFit fit = SineFit.threeParameters(rounded, 1 / 400.0, 50);

    assertAll(
        () -> assertEquals(8.661029, fit.cosineVolts(), 1e-6),
        () -> assertEquals(4.999622, fit.sineVolts(), 1e-6),
        () -> assertEquals(1.000000, fit.offsetVolts(), 1e-6),
        () -> assertEquals(10.000482, fit.amplitudeVolts(), 1e-6));
  }

  /**
   * 325.27 V, noise 3 V, 50 Hz, 5000 samples at 50 kS/s: amplitude 0.0600 V, offset 0.0424 V,
   * frequency 1.017 mHz, phase at the first sample 0.3689 mrad. The scatter of 100 fits is known to
   * 7 %; three of that are allowed.
   */
  @Test
  void fourParametersScatterAsTheCramerRaoBoundSays() {
    SineFit[] fits =
        IntStream.range(0, 100)
            .parallel()
            .mapToObj(seed -> SineFit.fourParameters(noisy(seed), 1 / 50e3, 50.001, 2))
            .toArray(SineFit[]::new);

    assertAll(
        () -> assertScatter(0.0600, fits, SineFit::amplitudeVolts),
        () -> assertScatter(0.0424, fits, SineFit::offsetVolts),
        () -> assertScatter(1.017e-3, fits, SineFit::frequencyHertz),
        () ->
            assertScatter(0.3689e-3, fits, fit -> Math.atan2(fit.cosineVolts(), fit.sineVolts())));
  }

  private static double[] noisy(int seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[] volts = new double[5000];
    for (int i = 0; i < volts.length; i++) {
      double radius = Math.sqrt(-2 * Math.log(1 - random.nextDouble()));
      double noise = radius * Math.cos(2 * Math.PI * random.nextDouble());
      volts[i] = 325.27 * Math.sin(2 * Math.PI * 50 * i / 50e3 + 0.4) + 3 * noise;
    }
    return volts;
  }

  private static void assertScatter(
      double bound, SineFit[] fits, ToDoubleFunction<SineFit> figure) {
    double[] figures =
        IntStream.range(0, fits.length).mapToDouble(k -> figure.applyAsDouble(fits[k])).toArray();
    double mean =
        IntStream.range(0, figures.length).mapToDouble(k -> figures[k]).sum() / figures.length;
    double squares = 0;
    for (double one : figures) {
      squares += (one - mean) * (one - mean);
    }
    assertEquals(bound, Math.sqrt(squares / (figures.length - 1)), 0.21 * bound);
  }
}
