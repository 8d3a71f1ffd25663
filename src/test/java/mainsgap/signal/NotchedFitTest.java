package mainsgap.signal;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** On drawn cycles, whose voltage is known at each instant. */
class NotchedFitTest {
  private static final double HERTZ = 50.02;
  private static final double PEAK_VOLTS = 325;
  private static final double THIRD_VOLTS = 9;
  private static final double NOISE_VOLTS = 0.6;
  private static final double CODE_VOLTS = 0.2;
  private static final double CYCLES = 8;
  private static final int ORDERS = 15;

  /** Without the notches, from the first sample on. */
  private static double smooth(double seconds) {
    double angle = 2 * Math.PI * HERTZ * seconds;
    return PEAK_VOLTS * Math.sin(angle) + THIRD_VOLTS * Math.sin(3 * angle + 0.4);
  }

  /** A quarter is missing for 0.15 ms of each half cycle, from 40 degrees on. */
  private static boolean isNotch(double seconds) {
    double halves = 2 * HERTZ * seconds - 40 / 180.0;
    return (halves - Math.floor(halves)) / (2 * HERTZ) < 0.15e-3;
  }

  private static double notched(double seconds) {
    return isNotch(seconds) ? 0.75 * smooth(seconds) : smooth(seconds);
  }

  private static double[] samples(DoubleUnaryOperator volts, double sampleRateHertz) {
    SplittableRandom random = new SplittableRandom(3);
    double[] samples = new double[(int) (CYCLES / HERTZ * sampleRateHertz)];
    for (int i = 0; i < samples.length; i++) {
      double noisy = volts.applyAsDouble(i / sampleRateHertz) + NOISE_VOLTS * random.nextGaussian();
      samples[i] = CODE_VOLTS * Math.rint(noisy / CODE_VOLTS);
    }
    return samples;
  }

  private static TimeAxis axis(double[] samples, double sampleRateHertz) {
    return new TimeAxis(0, 1 / sampleRateHertz, samples.length, 0);
  }

  private static HarmonicModel bent(double[] samples, TimeAxis time) {
    return HarmonicFit.fit(samples, time, 0, samples.length, 50, ORDERS, true);
  }

  private static @Nullable NotchedModel fit(DoubleUnaryOperator volts, double sampleRateHertz) {
    double[] samples = samples(volts, sampleRateHertz);
    TimeAxis time = axis(samples, sampleRateHertz);
    return NotchedFit.fit(samples, time, 0, samples.length, bent(samples, time), CODE_VOLTS);
  }

  private static double farthestFromSmooth(PeriodicModel model) {
    double farthest = 0;
    for (double seconds = 1e-3; seconds < CYCLES / HERTZ; seconds += 17e-6) {
      farthest = Math.max(farthest, Math.abs(model.voltsAt(seconds) - smooth(seconds)));
    }
    return farthest;
  }

  /** At a million samples a second they are thinned. */
  @ParameterizedTest
  @ValueSource(doubles = {20e3, 100e3, 1e6})
  void harmonicsAreThoseWithoutTheNotches(double sampleRateHertz) {
    double[] samples = samples(NotchedFitTest::notched, sampleRateHertz);
    HarmonicModel bent = bent(samples, axis(samples, sampleRateHertz));
    NotchedModel found =
        assertInstanceOf(NotchedModel.class, fit(NotchedFitTest::notched, sampleRateHertz));

    assertTrue(farthestFromSmooth(bent) > 3, () -> "bent by " + farthestFromSmooth(bent) + " V");
    assertAll(
        () -> assertEquals(0, farthestFromSmooth(found.harmonics()), 0.3),
        () -> assertEquals(HERTZ, found.frequencyHertz(), 1e-3),
        () -> assertEquals(PEAK_VOLTS, found.amplitudeVolts(), 0.1),
        () -> assertEquals(NOISE_VOLTS, found.harmonics().noiseVolts(), 0.1 * NOISE_VOLTS),
        () -> assertEquals(0, found.harmonics().noiseCorrelation(), 0.1));
  }

  @Test
  void modelHasTheNotchesAndTellsWhereItIsVague() {
    NotchedModel found = assertInstanceOf(NotchedModel.class, fit(NotchedFitTest::notched, 100e3));
    double notch = (2 + 40 / 360.0) / HERTZ + 75e-6;
    double flank = (2 + 40 / 360.0) / HERTZ;

    assertAll(
        () -> assertEquals(notched(notch), found.voltsAt(notch), 2),
        () -> assertEquals(smooth(2 / HERTZ), found.voltsAt(2 / HERTZ), 1),
        () -> assertEquals(NOISE_VOLTS, found.usualSpreadVolts(), 0.2),
        () -> assertTrue(found.spreadVoltsAt(flank) > 10, "at the flank of a notch"),
        () -> assertTrue(found.isVagueInPlaces()),
        () -> assertFalse(found.hasSteps(), "notches are the load's, no rests of an inverter"));
  }

  @Test
  void manyVoltagesAtOnceAreThoseOfOne() {
    NotchedModel found = assertInstanceOf(NotchedModel.class, fit(NotchedFitTest::notched, 100e3));
    double[] row = found.voltsEvery(13e-6, 0.011, 2000);

    for (int i = 0; i < row.length; i++) {
      assertEquals(found.voltsAt(0.011 + i * 13e-6), row[i], 1e-6, "voltage " + i);
    }
  }

  @Test
  void pulseThatComesOnceHidesNoNotches() {
    NotchedModel found =
        assertInstanceOf(
            NotchedModel.class,
            fit(s -> notched(s) + (Math.abs(s - 0.0712) < 50e-6 ? 150 : 0), 100e3));

    assertEquals(0, farthestFromSmooth(found.harmonics()), 0.3);
  }

  @Test
  void smoothSupplyHasNone() {
    assertNull(fit(NotchedFitTest::smooth, 100e3));
  }

  /** What comes once is no notch, nor what lasts: a fit that gave way to it would hide it. */
  @Test
  void disturbanceThatComesOnceIsNone() {
    assertNull(fit(seconds -> seconds > 0.14 && isNotch(seconds) ? 0 : smooth(seconds), 100e3));
  }

  @Test
  void stepOfTheSupplyIsNone() {
    assertNull(fit(seconds -> (seconds > 0.12 ? 0.9 : 1) * smooth(seconds), 100e3));
  }

  @Test
  void shapeOfASteppedOutputIsNone() {
    double step = PEAK_VOLTS / 3;
    assertNull(fit(seconds -> step * Math.rint(smooth(seconds) / step), 100e3));
  }

  @Test
  void tooFewCyclesTellNone() {
    double[] samples = samples(NotchedFitTest::notched, 100e3);
    TimeAxis time = axis(samples, 100e3);
    int to = (int) (2.4 / HERTZ * 100e3);
    HarmonicModel bent = HarmonicFit.fit(samples, time, 0, to, 50, ORDERS, true);

    assertNull(NotchedFit.fit(samples, time, 0, to, bent, CODE_VOLTS));
  }
}
