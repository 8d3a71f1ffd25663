package mainsgap.transfer.gap;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import mainsgap.signal.Capture;
import mainsgap.signal.CodeFormat;
import mainsgap.signal.Event;
import mainsgap.signal.Scale;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.Waveform;
import mainsgap.transfer.TransferMeasurement;
import mainsgap.transfer.bank.Kind;
import mainsgap.transfer.bank.KnownCapture;
import mainsgap.transfer.outcome.FurtherInterruptions;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.Outcome;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A gap of 8 ms, and what breaks after it. */
class FurtherBreaksTest {
  private static final TimeAxis TIME = new TimeAxis(0, 1e-5, 60_000, 0);
  private static final MeasuringTask TASK = new MeasuringTask(Event.LOSS, 230, 50);
  private static final double LOSS_SECONDS = 0.1533;

  private static FurtherInterruptions found(double[]... breaks) {
    return inLoad(
        seconds -> {
          boolean dead = seconds >= LOSS_SECONDS && seconds < LOSS_SECONDS + 8e-3;
          for (double[] one : breaks) {
            dead |= seconds >= one[0] && seconds < one[0] + one[1] / 1e3;
          }
          return dead ? 0 : 230 * Math.sqrt(2) * Math.sin(2 * Math.PI * 50 * seconds);
        });
  }

  private static FurtherInterruptions inLoad(DoubleUnaryOperator load) {
    SplittableRandom dice = new SplittableRandom(5);
    ByteBuffer block = ByteBuffer.allocate(TIME.length() * 8).order(ByteOrder.LITTLE_ENDIAN);
    for (int i = 0; i < TIME.length(); i++) {
      block.putDouble(load.applyAsDouble(TIME.secondsAt(i)) + dice.nextDouble() - 0.5);
    }
    Waveform output = new Waveform(block.array(), CodeFormat.REAL_64_LSB_FIRST, Scale.VOLTS);
    Outcome outcome = TransferMeasurement.measure(Capture.ofOutput(TIME, output), TASK);
    return ((Measured) outcome).furtherInterruptions();
  }

  /** Away from its fit about a crossing, it moves as it does there. */
  @Test
  void aSupplyThatWalksFasterThanItIsFollowedIsNotBroken() {
    KnownCapture known = Kind.WALKING_FREQUENCY.capture(971);
    Outcome outcome = TransferMeasurement.measure(known.capture(), known.task());
    Measured gap = assertInstanceOf(Measured.class, outcome, outcome.sentence());
    assertEquals(FurtherInterruptions.NONE, gap.furtherInterruptions());
  }

  @Test
  void aReturnThatStaysHasNone() {
    assertEquals(FurtherInterruptions.NONE, found());
  }

  /** Dead from 0.5 s to the record's end at 0.6 s. */
  @Test
  void theRecordEndsInABreakThatIsAtLeastAsLongAsItIsSeen() {
    FurtherInterruptions found = found(new double[] {0.5, 100});
    assertTrue(found.isOpen());
    assertEquals(1, found.count());
    Double longest = found.longestMillis();
    assertNotNull(longest);
    assertEquals(100, longest, 2);
  }

  @ParameterizedTest
  @CsvSource({"0.30, 4", "0.302, 6.3", "0.305, 9", "0.307, 15", "0.309, 3.1"})
  void theIntervalOfABreakHoldsItsLengthWhereverItBegins(double seconds, double millis) {
    FurtherInterruptions found = found(new double[] {seconds, millis});
    assertEquals(1, found.count());
    Double longest = found.longestMillis();
    assertNotNull(longest);
    assertEquals(millis, longest, found.uncertaintyMillis());
    assertTrue(found.uncertaintyMillis() < 1.5, () -> "±" + found.uncertaintyMillis());
  }

  @ParameterizedTest
  @CsvSource({
    "-40, 0, 13",
    "30, 0, 6.3",
    "170, 0, 9",
    "90, 0.7, 4",
    "-12, -0.5, 11",
    "60, 0, 36",
    "5, 10, 8"
  })
  void aBreakEndsWhereAnotherSupplyFeeds(double stepDegrees, double stepHertz, double millis) {
    double from = 0.302;
    double to = from + millis / 1e3;
    FurtherInterruptions found =
        inLoad(
            t -> {
              double again = Math.max(0, t - to);
              double step = t < to ? 0 : Math.toRadians(stepDegrees);
              double angle = 2 * Math.PI * (50 * t + stepHertz * again) + step;
              boolean dead =
                  (t >= LOSS_SECONDS && t < LOSS_SECONDS + 8e-3) || (t >= from && t < to);
              return dead ? 0 : 230 * Math.sqrt(2) * Math.sin(angle);
            });
    assertEquals(1, found.count());
    Double longest = found.longestMillis();
    assertNotNull(longest);
    assertEquals(millis, longest, found.uncertaintyMillis());
    assertTrue(found.uncertaintyMillis() < 1.5, () -> "±" + found.uncertaintyMillis());
  }

  @Test
  void aBreakBehindAnotherSupplyIsCountedToo() {
    FurtherInterruptions found =
        inLoad(
            t -> {
              boolean dead =
                  (t >= LOSS_SECONDS && t < LOSS_SECONDS + 8e-3)
                      || (t >= 0.3 && t < 0.305)
                      || (t >= 0.43 && t < 0.442);
              double step = t < 0.3 ? 0 : t < 0.43 ? 1 : 2.2;
              return dead ? 0 : 230 * Math.sqrt(2) * Math.sin(2 * Math.PI * 50 * t + step);
            });
    assertEquals(2, found.count());
    Double longest = found.longestMillis();
    assertNotNull(longest);
    assertEquals(12, longest, found.uncertaintyMillis());
  }

  @ParameterizedTest
  @CsvSource({"0.03", "0.2", "-0.5"})
  void aSupplyThatDriftsFeedsAllAlong(double hertzPerSecond) {
    FurtherInterruptions found =
        inLoad(
            t -> {
              double since = Math.max(0, t - LOSS_SECONDS - 8e-3);
              double angle = 2 * Math.PI * (50 * t + hertzPerSecond * since * since / 2);
              boolean dead = t >= LOSS_SECONDS && t < LOSS_SECONDS + 8e-3;
              return dead ? 0 : 230 * Math.sqrt(2) * Math.sin(angle);
            });
    assertEquals(FurtherInterruptions.NONE, found);
  }

  @Test
  void theLongestOfSeveralIsTold() {
    FurtherInterruptions found =
        found(new double[] {0.26, 5}, new double[] {0.32, 11}, new double[] {0.41, 4});
    assertEquals(3, found.count());
    Double longest = found.longestMillis();
    assertNotNull(longest);
    assertEquals(11, longest, found.uncertaintyMillis());
  }
}
