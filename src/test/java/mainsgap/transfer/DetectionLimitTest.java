package mainsgap.transfer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.Event;
import mainsgap.signal.TimeAxis;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.NoInterruption;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Refused;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A gap of the length that a capture says it would have shown is shown, wherever it falls. */
class DetectionLimitTest {
  private static final MeasuringTask TASK = new MeasuringTask(Event.LOSS, 230, 50);
  private static final double LOSS_SECONDS = 0.1;

  /** The gap lies about a crossing, or up to half a cycle behind it. */
  private static final int PLACES = 12;

  private enum Supply {
    SINE,
    DISTORTED,
    NOTCHED;

    double voltsAt(double seconds) {
      double mains = SketchedCapture.mains(seconds);
      return switch (this) {
        case SINE -> mains;
        case DISTORTED ->
            mains
                + 0.04 * SketchedCapture.sine(seconds, 150, 10)
                + 0.03 * SketchedCapture.sine(seconds, 250, 80);
        case NOTCHED -> mains - notchVolts(seconds);
      };
    }
  }

  @ParameterizedTest
  @CsvSource({
    "SINE, 10e3, 0.94",
    "SINE, 20e3, 0.84",
    "SINE, 100e3, 0.78",
    "DISTORTED, 10e3, 0.94",
    "DISTORTED, 20e3, 0.84",
    "NOTCHED, 20e3, 1.94",
    "NOTCHED, 40e3, 1.365",
    "NOTCHED, 100e3, 0.93"
  })
  void aGapAsLongAsTheLimitIsNotToldAsNone(Supply supply, double rateHertz, double limitMillis) {
    NoInterruption none =
        assertInstanceOf(NoInterruption.class, withGap(supply, rateHertz, LOSS_SECONDS, 0));
    assertEquals(limitMillis, none.shortestVisibleMillis(), 0.005);
    long hidden =
        IntStream.range(0, PLACES)
            .mapToObj(
                place ->
                    withGap(
                        supply,
                        rateHertz,
                        LOSS_SECONDS + 0.01 * place / PLACES,
                        1e-3 * none.shortestVisibleMillis()))
            .filter(NoInterruption.class::isInstance)
            .count();
    assertTrue(hidden == 0, hidden + " of " + PLACES + " gaps told as none");
  }

  /** A gap in a rest changes nothing on the load. */
  @ParameterizedTest
  @ValueSource(doubles = {1, 2})
  void whatLiesInARestIsHidden(double restMillis) {
    Outcome outcome = outcome(50e3, seconds -> restsAboutCrossings(seconds, 1e-3 * restMillis));
    NoInterruption none = assertInstanceOf(NoInterruption.class, outcome, outcome.sentence());
    assertTrue(none.shortestVisibleMillis() > restMillis, none.sentence());
    assertTrue(none.shortestVisibleMillis() < restMillis + 0.5, none.sentence());
  }

  /** It is held at a tenth of the peak, which is no dead load, behind a step of three degrees. */
  @Test
  void aGapInWhichTheLoadKeepsALittleIsNotToldAsNone() {
    Refused refused =
        assertInstanceOf(
            Refused.class,
            outcome(
                50e3,
                seconds -> {
                  boolean isGap = seconds >= 0.104 && seconds < 0.112;
                  double fed = SketchedCapture.sine(seconds, 50, seconds < LOSS_SECONDS ? 0 : 3);
                  return isGap ? 0.1 * SketchedCapture.PEAK_VOLTS : fed;
                }));
    assertTrue(refused.reason().contains("at 103.9 ms"), refused.reason());
    assertTrue(refused.reason().contains("neither"), refused.reason());
  }

  @Test
  void aGapInNoiseThatHasGrownIsNotToldAsNone() {
    SplittableRandom dice = new SplittableRandom(3);
    assertNotUninterrupted(
        outcome(
            10e3,
            seconds -> {
              boolean isGap = seconds >= 0.1 && seconds < 0.106;
              double noise = seconds < 0.09 ? 0 : 10 * dice.nextGaussian();
              return (isGap ? 0 : SketchedCapture.mains(seconds)) + noise;
            }));
  }

  /** It lies about a crossing of the supply that has taken over. */
  @ParameterizedTest
  @ValueSource(doubles = {1, 1.2, 1.42})
  void aShortGapSoonAfterATakeOverIsNotToldAsNone(double millis) {
    assertNotUninterrupted(
        outcome(
            25e3,
            seconds -> {
              boolean isGap = Math.abs(seconds - 0.14887) < 0.5e-3 * millis;
              double fed =
                  seconds < LOSS_SECONDS
                      ? SketchedCapture.mains(seconds)
                      : SketchedCapture.sine(seconds, 50.1, 10 - 360 * 0.1 * LOSS_SECONDS);
              return isGap ? 0 : fed;
            }));
  }

  /** The inverter goes over to its bypass long after mains was lost, and once more later. */
  @Test
  void takeOversWithoutAGapAreToldAsNone() {
    Outcome outcome =
        outcome(
            50e3,
            seconds -> {
              double degrees = seconds < 0.3 ? 0 : 20;
              return SketchedCapture.sine(seconds, 50, seconds < 0.42 ? degrees : 8);
            });
    assertInstanceOf(NoInterruption.class, outcome, outcome.sentence());
  }

  private static void assertNotUninterrupted(Outcome outcome) {
    assertFalse(outcome instanceof NoInterruption, outcome.sentence());
  }

  private static double restsAboutCrossings(double seconds, double restSeconds) {
    double halves = 100 * seconds - Math.rint(100 * seconds);
    return Math.abs(halves) / 100 < restSeconds / 2 ? 0 : SketchedCapture.mains(seconds);
  }

  private static Outcome withGap(
      Supply supply, double rateHertz, double middleSeconds, double gapSeconds) {
    return outcome(
        rateHertz,
        seconds ->
            Math.abs(seconds - middleSeconds) < gapSeconds / 2 ? 0 : supply.voltsAt(seconds));
  }

  private static Outcome outcome(double rateHertz, DoubleUnaryOperator output) {
    TimeAxis time = new TimeAxis(-0.25, 1 / rateHertz, (int) (0.8 * rateHertz), 0);
    SketchedCapture sketch =
        new SketchedCapture(time)
            .with(
                ChannelRole.MAINS,
                1,
                seconds -> seconds < LOSS_SECONDS ? SketchedCapture.mains(seconds) : 0)
            .with(ChannelRole.OUTPUT, 1, output);
    return TransferMeasurement.measure(sketch.capture(), TASK);
  }

  /** Six notches a cycle of a fifth of the peak, each over in 0.4 ms, towards zero. */
  private static double notchVolts(double seconds) {
    double cycles = 50 * seconds - Math.floor(50 * seconds);
    double sixth = (cycles - 0.07) * 6 - Math.floor((cycles - 0.07) * 6);
    double left = 1 - sixth / 0.12;
    double height = 0.2 * SketchedCapture.PEAK_VOLTS * Math.signum(SketchedCapture.mains(seconds));
    return left > 0 ? left * height : 0;
  }
}
