package mainsgap.transfer.gap;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Objects;
import java.util.function.DoubleUnaryOperator;
import mainsgap.signal.Capture;
import mainsgap.signal.CodeFormat;
import mainsgap.signal.Event;
import mainsgap.signal.Scale;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.Waveform;
import mainsgap.transfer.TransferMeasurement;
import mainsgap.transfer.outcome.Cleanness;
import mainsgap.transfer.outcome.CleannessWord;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.Outcome;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Waves in closed form, 230 V at 50 Hz, read through the whole measurement: each expected figure is
 * worked out by hand from the formula of the wave.
 */
class CleannessTest {
  private static final double PEAK = 230 * Math.sqrt(2);
  private static final double LOSS_SECONDS = 0.2237;
  private static final double RETURN_SECONDS = 0.2313;
  private static final double END_SECONDS = 0.5;
  private static final double INTERVAL_SECONDS = 10e-6;

  /** Codes of 0.05 V. */
  private static final double STEP_VOLTS = 0.05;

  private static double sine(double seconds) {
    return PEAK * Math.sin(2 * Math.PI * 50 * seconds);
  }

  /** Mains up to the loss, nothing, then {@code output} from the return on. */
  private static Cleanness of(DoubleUnaryOperator output) {
    return measured(output, t -> 0, END_SECONDS, 32_767);
  }

  private static Cleanness measured(
      DoubleUnaryOperator output, DoubleUnaryOperator gap, double endSeconds, int rail) {
    int n = (int) (endSeconds / INTERVAL_SECONDS);
    byte[] block = new byte[2 * n];
    for (int i = 0; i < n; i++) {
      double t = i * INTERVAL_SECONDS;
      double volts =
          t < LOSS_SECONDS
              ? sine(t)
              : t < RETURN_SECONDS ? gap.applyAsDouble(t) : output.applyAsDouble(t);
      int code = (int) Math.max(-rail, Math.min(rail, Math.round(volts / STEP_VOLTS)));
      block[2 * i] = (byte) code;
      block[2 * i + 1] = (byte) (code >> 8);
    }
    Waveform waveform =
        new Waveform(
            block, CodeFormat.SIGNED_16_LSB_FIRST, new Scale(0, STEP_VOLTS, 0, -rail, rail));
    Outcome outcome =
        TransferMeasurement.measure(
            Capture.ofOutput(new TimeAxis(0, INTERVAL_SECONDS, n, 0), waveform),
            new MeasuringTask(Event.LOSS, 230, 50));
    Measured found = assertInstanceOf(Measured.class, outcome, outcome.sentence());
    return Objects.requireNonNull(found.cleanness());
  }

  private static <T> T told(@Nullable T figure) {
    return Objects.requireNonNull(figure);
  }

  @Test
  void aReturnWithoutAnyDisturbanceIsClean() {
    Cleanness found = of(CleannessTest::sine);
    assertEquals(0, found.peakOvershootPercent(), 0.05);
    assertEquals(0, told(found.peakUndershootPercent()), 0.05);
    assertEquals(0, told(found.thdAfter()).percent(), 0.02);
    assertEquals(0, told(found.dcOffsetPercent()), 0.01);
    assertEquals(Math.sqrt(2), told(found.crestFactor()), 0.001);
    assertEquals(0, told(found.settledDeviationPercent()), 0.02);
    assertEquals(0, told(found.settlingMillis()));
    assertEquals(0, told(found.settlingTo3PercentMillis()));
    assertEquals(0, found.restrikes());
    assertEquals(0, told(found.residual().fiveCyclesPercent()), 0.05);
    assertEquals(CleannessWord.CLEAN, found.word());
  }

  @ParameterizedTest
  @CsvSource({"0, 10", "3, 10", "8, 10"})
  void distortionIsToldWithTheCyclesOfItsWindow(double percent, int cycles) {
    Cleanness found =
        of(t -> sine(t) + percent / 100 * PEAK * Math.sin(2 * Math.PI * 250 * t + 0.4));
    assertEquals(percent, told(found.thdAfter()).percent(), 0.02);
    assertEquals(cycles, told(found.thdAfter()).cycles());
    assertEquals(0, told(found.thdBefore()).percent(), 0.02);
    assertEquals(10, told(found.thdBefore()).cycles());
  }

  /** After the return 3 cycles are recorded, of which the first is left to settling. */
  @Test
  void aShortRecordTellsItsDistortionOverFewerCycles() {
    Cleanness found =
        measured(
            t -> sine(t) + 0.03 * PEAK * Math.sin(2 * Math.PI * 250 * t),
            t -> 0,
            RETURN_SECONDS + 0.081,
            32_767);
    assertTrue(told(found.thdAfter()).cycles() >= 2 && told(found.thdAfter()).cycles() <= 4);
    assertEquals(3, told(found.thdAfter()).percent(), 0.05);
    assertNull(found.residual().fiveCyclesPercent());
  }

  /** A pulse of known height on the first whole crest, 245 ms; it lasts long beside an average. */
  @ParameterizedTest
  @ValueSource(doubles = {12, 35, 60})
  void overshootIsToldAboveNominalPeak(double percent) {
    Cleanness found = of(t -> sine(t) * (t > 0.244 && t < 0.246 ? 1 + percent / 100 : 1));
    assertEquals(percent, found.peakOvershootPercent(), 0.1);
    assertEquals(false, found.clippedAfterReturn());
  }

  @Test
  void overshootBeyondTheRangeIsMarkedAsAtLeast() {
    int rail = (int) (1.4 * PEAK / STEP_VOLTS);
    Cleanness found =
        measured(t -> sine(t) * (t > 0.244 && t < 0.246 ? 1.9 : 1), t -> 0, END_SECONDS, rail);
    assertEquals(true, found.clippedAfterReturn());
    assertEquals(40, found.peakOvershootPercent(), 0.1);
  }

  /** The third half wave after the return (250 to 260 ms) stays 20 % low. */
  @Test
  void undershootIsThatOfTheLowestHalfWave() {
    Cleanness found = of(t -> sine(t) * (t > 0.25 && t < 0.26 ? 0.8 : 1));
    assertEquals(20, told(found.peakUndershootPercent()), 0.1);
    assertEquals(0, found.peakOvershootPercent(), 0.05);
  }

  /**
   * The disturbance is 0.4 PEAK e^(-s/5 ms) at 400 Hz: it falls below 10 % after 6.93 ms and below
   * 3 % after 12.95 ms, at the latest half a period of 2.5 ms earlier; its RMS over n cycles T is
   * the root of (0.4 PEAK)^2 / 2 x 2.5 ms / nT, less than 1 % off for the rest of a period.
   */
  @Test
  void aDecayingRingSettlesAndLeavesItsResidual() {
    Cleanness found =
        of(
            t -> {
              double since = t - RETURN_SECONDS;
              return sine(t)
                  + 0.4 * PEAK * Math.exp(-since / 5e-3) * Math.sin(2 * Math.PI * 400 * since);
            });
    assertEquals(6.93 - 0.62, told(found.settlingMillis()), 0.65);
    assertEquals(12.95 - 0.62, told(found.settlingTo3PercentMillis()), 0.65);
    double full = 100 * 0.4 * Math.sqrt(2.5 / 20);
    assertEquals(full, told(found.residual().oneCyclePercent()), 0.25);
    assertEquals(full / Math.sqrt(2), told(found.residual().twoCyclesPercent()), 0.25);
    assertEquals(full / Math.sqrt(5), told(found.residual().fiveCyclesPercent()), 0.25);
    assertEquals(CleannessWord.DISTURBED, found.word());
  }

  /** 6 V DC is 2.6 % of 230 V; 207 V is 10 % low. */
  @Test
  void offsetAndLevelAreThoseOfTheSettledSupply() {
    Cleanness found = of(t -> 0.9 * sine(t) + 6);
    assertEquals(100 * 6 / 230.0, told(found.dcOffsetPercent()), 0.02);
    assertEquals(100 * (Math.hypot(207, 6) / 230 - 1), told(found.settledDeviationPercent()), 0.05);
  }

  /** The return steps from 0 to the sine's value within one interval. */
  @Test
  void theStepOfTheReturnIsTheSteepest() {
    Cleanness found = of(t -> sine(t + 0.004));
    double step = Math.abs(sine(RETURN_SECONDS + 0.004));
    assertEquals(step / 10, found.steepestVoltsPerMicrosecond(), 0.02 * PEAK / 10);
  }

  /** Mains back for 0.6 ms after 6 ms without it; bounce would come within a quarter cycle. */
  @ParameterizedTest
  @CsvSource({"6.0, 1", "1.0, 0"})
  void onlyWhatComesBackAfterAQuarterCycleIsARestrike(double afterMillis, int restrikes) {
    double from = LOSS_SECONDS + afterMillis / 1e3;
    Cleanness found =
        measured(
            t -> sine(t + 0.004),
            t -> t >= from && t < from + 0.6e-3 ? sine(t) : 0,
            END_SECONDS,
            32_767);
    assertEquals(restrikes, found.restrikes());
  }

  /** Square output of 230 V: THD to order 40 by its Fourier series, crest factor 1. */
  @Test
  void aSquareOutputIsRough() {
    Cleanness found = of(t -> sine(t) >= 0 ? 230 : -230);
    assertEquals(47.03, told(found.thdAfter()).percent(), 0.1);
    assertEquals(1, told(found.crestFactor()), 0.005);
    assertEquals(100 * (1 - 1 / Math.sqrt(2)), told(found.peakUndershootPercent()), 0.1);
    assertEquals(CleannessWord.ROUGH, found.word());
  }
}
