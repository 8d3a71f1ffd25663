package mainsgap.signal;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * No numeric example of the sine fits of IEEE 1057 is published that we know of: the vectors were
 * computed with NumPy's least squares from the formulas of the standard (from memory). The bounds
 * are those of Cramér and Rao for a real sine in white noise (amplitude from a published Fisher
 * matrix, the others from memory, checked by a Monte-Carlo run in NumPy).
 */
class HarmonicFitTest {
  private static final double INTERVAL = 1 / 3200.0;

  /** 10 cos(2 pi 50 t - pi/6) + 1. */
  private static final double[] CLEAN =
      IntStream.range(0, 64)
          .mapToDouble(i -> 1 + 10 * Math.cos(2 * Math.PI * 50 * i * INTERVAL - Math.PI / 6))
          .toArray();

  private static HarmonicModel fit(double[] volts, double interval, double hertz, boolean refine) {
    return HarmonicFit.fit(
        volts, new TimeAxis(0, interval, volts.length, 0), 0, volts.length, hertz, 1, refine);
  }

  /** A cos(wt) + B sin(wt) + C, t from the first sample. */
  private static void assertSine(double a, double b, double c, HarmonicModel fit) {
    double within = 2e-6;
    assertAll(
        () -> assertEquals(a + c, fit.voltsAt(0), within),
        () -> assertEquals(b + c, fit.voltsAt(0.25 / fit.frequencyHertz()), within),
        () -> assertEquals(c, fit.offsetVolts(), within));
  }

  @Test
  void sineAtAWrongFrequencyIsTheNearestOne() {
    assertSine(9.378303, 3.739729, 1.357344, fit(CLEAN, INTERVAL, 48, false));
  }

  @Test
  void sineAtARightFrequencyIsFoundInRoundedSamples() {
    double[] rounded = {9.66, 10.66, 6.00, -1.59, -7.66, -8.66, -4.00, 3.59};

    assertSine(8.661029, 4.999622, 1.000000, fit(rounded, 1 / 400.0, 50, false));
  }

  @Test
  void frequencyOfACleanSineIsFoundFromAWrongOne() {
    HarmonicModel fit = fit(CLEAN, INTERVAL, 48, true);

    assertEquals(50, fit.frequencyHertz(), 1e-6);
    assertSine(8.6602540, 5, 1, fit);
  }

  /**
   * 325.27 V, noise 3 V, 50 Hz, 5000 samples at 50 kS/s: amplitude 0.0600 V, offset 0.0424 V,
   * frequency 1.017 mHz, phase at the first sample 0.3689 mrad. The scatter of 100 fits is known to
   * 7 %; three of that are allowed.
   */
  @Test
  void fitsScatterAsTheCramerRaoBoundSays() {
    HarmonicModel[] fits =
        IntStream.range(0, 100)
            .mapToObj(seed -> fit(noisy(seed), 1 / 50e3, 50.001, true))
            .toArray(HarmonicModel[]::new);

    assertAll(
        () -> assertScatter(0.0600, fits, fit -> fit.amplitudeVolts()),
        () -> assertScatter(0.0424, fits, HarmonicModel::offsetVolts),
        () -> assertScatter(1.017e-3, fits, HarmonicModel::frequencyHertz),
        () -> assertScatter(0.3689e-3, fits, fit -> Math.toRadians(fit.angleDegreesAt(0))));
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
      double bound, HarmonicModel[] fits, ToDoubleFunction<HarmonicModel> figure) {
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
