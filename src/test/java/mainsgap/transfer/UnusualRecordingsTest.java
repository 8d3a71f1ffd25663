package mainsgap.transfer;

import static mainsgap.transfer.SketchedCapture.inverter;
import static mainsgap.transfer.SketchedCapture.mains;
import static mainsgap.transfer.SketchedCapture.sine;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Objects;
import java.util.function.DoubleUnaryOperator;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.Event;
import mainsgap.signal.TimeAxis;
import mainsgap.transfer.bank.HeldOutKind;
import mainsgap.transfer.bank.Kind;
import mainsgap.transfer.bank.KnownCapture;
import mainsgap.transfer.outcome.FurtherInterruptions;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.NoInterruption;
import mainsgap.transfer.outcome.NoReturn;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Refused;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Supplies that move, step or are notched; loads that are taken over, and dead all the same. */
class UnusualRecordingsTest {
  private static final TimeAxis TIME = new TimeAxis(-0.25, 20e-6, 50_000, 0);
  private static final MeasuringTask TASK = new MeasuringTask(Event.LOSS, 230, 50);
  private static final double LOSS_SECONDS = 3.0071e-3;
  private static final double RETURN_SECONDS = 12.4133e-3;
  private static final double NOISE_VOLTS = 1;

  private final SketchedCapture sketch = new SketchedCapture(TIME);

  private Outcome outcome(DoubleUnaryOperator output) {
    return outcome(output, NOISE_VOLTS);
  }

  private Outcome outcome(DoubleUnaryOperator output, double noiseVolts) {
    sketch.with(ChannelRole.OUTPUT, noiseVolts, output);
    return TransferMeasurement.measure(sketch.capture(), TASK);
  }

  private void mainsLost() {
    sketch.with(
        ChannelRole.MAINS, NOISE_VOLTS, seconds -> seconds < LOSS_SECONDS ? mains(seconds) : 0);
  }

  private static DoubleUnaryOperator gap(DoubleUnaryOperator before, DoubleUnaryOperator after) {
    return seconds -> {
      if (seconds < LOSS_SECONDS) {
        return before.applyAsDouble(seconds);
      }
      return seconds < RETURN_SECONDS ? 0 : after.applyAsDouble(seconds);
    };
  }

  private static void assertGap(double millis, Outcome outcome) {
    Measured gap = assertInstanceOf(Measured.class, outcome, outcome.sentence());
    assertEquals(millis, gap.transferMillis(), gap.uncertaintyMillis(), outcome.sentence());
    assertTrue(gap.uncertaintyMillis() < 0.15, outcome.sentence());
  }

  private static void assertTheGap(Outcome outcome) {
    assertGap(1e3 * (RETURN_SECONDS - LOSS_SECONDS), outcome);
  }

  private static void assertRefused(Outcome outcome) {
    assertInstanceOf(Refused.class, outcome, outcome.sentence());
  }

  @Test
  void anOutputThatIsTakenOverAndThenDeadIsInterrupted() {
    mainsLost();
    Outcome outcome =
        outcome(
            seconds -> {
              if (seconds < LOSS_SECONDS) {
                return mains(seconds);
              }
              return seconds < LOSS_SECONDS + 0.08 ? sine(seconds, 50, 8) : 0;
            });
    NoReturn dead = assertInstanceOf(NoReturn.class, outcome);
    assertEquals(LOSS_SECONDS + 0.08, dead.lossSeconds(), 1e-4);
    Double held = dead.others().holdThroughMillis();
    assertEquals(80, held == null ? Double.NaN : held, 0.1);
  }

  /** Too soon after it for a supply of its own to be fitted between them. */
  @ParameterizedTest
  @CsvSource({"50, 8", "50.3, 0"})
  void anOutputThatIsTakenOverAndSoonDropsOutIsNoProofOfAnything(double hertz, double degrees) {
    mainsLost();
    Outcome outcome =
        outcome(
            seconds -> {
              if (seconds < LOSS_SECONDS) {
                return mains(seconds);
              }
              boolean dead = seconds > LOSS_SECONDS + 0.03 && seconds < LOSS_SECONDS + 0.042;
              double atLoss = 360 * (50 - hertz) * LOSS_SECONDS;
              return dead ? 0 : sine(seconds, hertz, degrees + atLoss);
            });
    assertNotEquals(Outcome.Kind.NO_INTERRUPTION, outcome.kind(), outcome.sentence());
  }

  @ParameterizedTest
  @CsvSource({"-100", "-35"})
  void mainsWhosePhaseJumpsBeforeItIsLostHidesNoGap(double jumpMillis) {
    mainsLost();
    DoubleUnaryOperator jumping =
        seconds -> seconds < jumpMillis / 1e3 ? mains(seconds) : sine(seconds, 50, 8);
    assertTheGap(outcome(gap(jumping, UnusualRecordingsTest::otherInverter)));
  }

  private static double otherInverter(double seconds) {
    return sine(seconds, 50.02, 47);
  }

  @ParameterizedTest
  @CsvSource({"0.92, 80", "1.1, 35"})
  void mainsWhoseVoltageStepsBeforeItIsLostHidesNoGap(double share, double millisBefore) {
    DoubleUnaryOperator stepping =
        seconds -> (seconds < LOSS_SECONDS - millisBefore / 1e3 ? 1 : share) * mains(seconds);
    assertTheGap(outcome(gap(stepping, SketchedCapture::inverter)));
  }

  /** As a capacitor across the open switch does. */
  @ParameterizedTest
  @CsvSource({"0.1, 0", "0.2, 0", "0.3, 0", "0.2, 60"})
  void aLoadThatAFractionOfMainsReachesIsDead(double share, double leadDegrees) {
    mainsLost();
    assertGap(
        200,
        outcome(
            seconds -> {
              if (seconds < LOSS_SECONDS) {
                return mains(seconds);
              }
              return seconds < LOSS_SECONDS + 0.2
                  ? share * sine(seconds, 50, leadDegrees)
                  : inverter(seconds);
            }));
  }

  @Test
  void aLoadThatAFractionOfMainsReachesForeverDoesNotReturn() {
    Outcome outcome = outcome(seconds -> (seconds < LOSS_SECONDS ? 1 : 0.2) * mains(seconds));
    NoReturn dead = assertInstanceOf(NoReturn.class, outcome, outcome.sentence());
    assertTrue(dead.atLeastMillis() > 700, outcome.sentence());
    assertEquals(false, dead.comesBackTooLate());
  }

  /** A sag from which the same supply comes back is none of its interruptions. */
  @Test
  void aSagThatEndsIsNoGap() {
    assertRefused(outcome(seconds -> (seconds > 0.05 && seconds < 0.1 ? 0.2 : 1) * mains(seconds)));
  }

  /** An inverter that walks its frequency to that of mains; hertz a second. */
  @ParameterizedTest
  @CsvSource({"50.5, 0.5", "50.5, 1", "49.5, 0.5", "51, 2"})
  void anOutputWhoseFrequencyMovesHasReturnedOnce(double hertz, double rate) {
    double walkSeconds = Math.abs(hertz - 50) / rate;
    double sign = Math.signum(50 - hertz);
    DoubleUnaryOperator walking =
        seconds -> {
          double since = seconds - RETURN_SECONDS;
          double walked = Math.min(since, walkSeconds);
          double cycles =
              hertz * walked + sign * rate * walked * walked / 2 + 50 * (since - walked);
          return SketchedCapture.PEAK_VOLTS * Math.sin(2 * Math.PI * cycles + 0.8);
        };
    assertTheGap(outcome(gap(SketchedCapture::mains, walking)));
  }

  /** As a rectifier commutates, each half cycle. */
  @ParameterizedTest
  @CsvSource({"0.6, 1e-4", "0.8, 1e-4", "0.8, 5e-5"})
  void aNotchInEachHalfCycleIsNoBounce(double share, double notchSeconds) {
    DoubleUnaryOperator plain = gap(SketchedCapture::mains, SketchedCapture::inverter);
    assertTheGap(
        outcome(
            seconds -> {
              double half = (seconds + 1.5e-3) / 10e-3;
              boolean isNotched = 10e-3 * (half - Math.floor(half)) < notchSeconds;
              return (isNotched ? share : 1) * plain.applyAsDouble(seconds);
            }));
  }

  @ParameterizedTest
  @CsvSource({"0.05", "0.2", "2"})
  void aFrequencyThatDriftsProvesNothing(double hertzPerSecond) {
    assertRefused(
        outcome(
            seconds ->
                SketchedCapture.PEAK_VOLTS
                    * Math.sin(2 * Math.PI * (50 + hertzPerSecond * seconds / 2) * seconds)));
  }

  @Test
  void aFrequencyThatStepsProvesThatAnotherSupplyFeeds() {
    Outcome outcome =
        outcome(seconds -> seconds < 0.2 ? mains(seconds) : sine(seconds - 0.2, 50.2, 0));
    NoInterruption none = assertInstanceOf(NoInterruption.class, outcome, outcome.sentence());
    assertTrue(none.proof().contains("frequency"), none.proof());
  }

  @Test
  void harmonicsThatStepProveThatAnotherSupplyFeeds() {
    Outcome outcome =
        outcome(seconds -> mains(seconds) + (seconds < 0.1 ? 0.03 : 0) * sine(seconds, 250, 30));
    NoInterruption none = assertInstanceOf(NoInterruption.class, outcome, outcome.sentence());
    assertEquals("the output's harmonics changed", none.proof());
  }

  @Test
  void mainsThatIsSeenToStayContradictsAnyOtherProof() {
    sketch.with(ChannelRole.MAINS, NOISE_VOLTS, SketchedCapture::mains);
    assertRefused(outcome(seconds -> seconds < 0.2 ? mains(seconds) : sine(seconds, 50, 8)));
  }

  @Test
  void aRecordThatEndsSoonAfterTheLossDoesNotShowThatTheLoadStaysFed() {
    sketch.with(ChannelRole.MAINS, NOISE_VOLTS, seconds -> seconds < 0.71 ? mains(seconds) : 0);
    Refused refused = assertInstanceOf(Refused.class, outcome(SketchedCapture::mains));
    assertTrue(refused.reason().contains("record at least 3 cycles"), refused.reason());
  }

  /** Before a loss alone may mains come to be taken for the proof of one. */
  @Test
  void mainsThatComesBackIsNoLoss() {
    sketch.with(ChannelRole.MAINS, NOISE_VOLTS, seconds -> seconds < 0.1 ? 0 : mains(seconds));
    assertRefused(outcome(SketchedCapture::mains));
  }

  @Test
  void aSwitchThatBouncesAndStaysOpenLeavesTheLoadDead() {
    Outcome outcome =
        outcome(
            seconds -> {
              boolean remade = seconds > LOSS_SECONDS + 0.5e-3 && seconds < LOSS_SECONDS + 1.4e-3;
              return seconds < LOSS_SECONDS || remade ? mains(seconds) : 0;
            });
    NoReturn dead = assertInstanceOf(NoReturn.class, outcome, outcome.sentence());
    assertEquals(false, dead.comesBackTooLate());
    assertTrue(dead.atLeastMillis() > 700, outcome.sentence());
    assertEquals(1.4, 1e3 * (dead.lastOpeningSeconds() - dead.lossSeconds()), 0.1);
  }

  /** The supply after is fitted to one whole fed cycle, or not at all. */
  @ParameterizedTest
  @CsvSource({"15, NO_RETURN", "19, NO_RETURN", "22, MEASURED", "27, MEASURED", "35, MEASURED"})
  void aRecordThatEndsSoonAfterTheReturn(double millisAfter, Outcome.Kind expected) {
    sketch.with(
        ChannelRole.OUTPUT, NOISE_VOLTS, gap(SketchedCapture::mains, SketchedCapture::inverter));
    int to = (int) TIME.indexAt(RETURN_SECONDS + millisAfter / 1e3);
    Outcome outcome = TransferMeasurement.measure(sketch.capture().part(0, to), TASK);
    assertEquals(expected, outcome.kind(), outcome.sentence());
    if (expected == Outcome.Kind.MEASURED) {
      assertTheGap(outcome);
    }
  }

  /** What the models make of its loss or not: a load that lies still to the end is not fed. */
  @ParameterizedTest
  @CsvSource({"1, 0, 50.3", "0.95, 0, 50", "1, 3, 50", "1, 8, 50"})
  void anOutputThatDropsOutSoonAfterItWasTakenOverDoesNotReturn(
      double share, double degrees, double hertz) {
    double droppedSeconds = LOSS_SECONDS + 30e-3;
    double ahead = 360 * (50 - hertz) * LOSS_SECONDS + degrees;
    NoReturn dead =
        assertInstanceOf(
            NoReturn.class,
            outcome(
                seconds -> {
                  if (seconds < LOSS_SECONDS) {
                    return mains(seconds);
                  }
                  return seconds < droppedSeconds ? share * sine(seconds, hertz, ahead) : 0;
                }));
    double shownMillis = 1e3 * (TIME.secondsAt(TIME.length() - 1.0) - droppedSeconds);
    assertTrue(dead.atLeastMillis() - dead.uncertaintyMillis() <= shownMillis, dead.sentence());
    assertTrue(dead.atLeastMillis() > shownMillis - 3, dead.sentence());
    assertTrue(dead.uncertaintyMillis() < 3, dead.sentence());
  }

  @Test
  void mainsThatComesBackWithinTheRecordWasLostAllTheSame() {
    sketch.with(
        ChannelRole.MAINS,
        NOISE_VOLTS,
        seconds -> seconds > LOSS_SECONDS && seconds < 0.4 ? 0 : mains(seconds));
    NoInterruption none = assertInstanceOf(NoInterruption.class, outcome(SketchedCapture::mains));
    assertEquals(LOSS_SECONDS, none.eventSeconds(), 2e-3);
  }

  @Test
  void aFrequencyThatStepsLateIsToldWhereItSteps() {
    double stepSeconds = 0.45;
    NoInterruption none =
        assertInstanceOf(
            NoInterruption.class,
            outcome(
                seconds ->
                    seconds < stepSeconds
                        ? mains(seconds)
                        : sine(seconds, 50.2, -360 * 0.2 * stepSeconds)));
    assertEquals(stepSeconds, none.eventSeconds(), 0.17, "to a sixth of the record");
  }

  /** The steps of an output are no noise: what comes back behind it is located all the same. */
  @ParameterizedTest
  @CsvSource({"3.207, 9.713", "8.107, 11.013", "4.907, 30.313"})
  void mainsThatComesBackBehindAQuasiSquareOutputIsLocated(double lostMillis, double backMillis) {
    sketch.with(
        ChannelRole.OUTPUT,
        NOISE_VOLTS,
        seconds -> {
          if (1e3 * seconds < lostMillis) {
            return quasiSquare(seconds);
          }
          return 1e3 * seconds < backMillis ? 0 : inverter(seconds);
        });
    MeasuringTask restoration = new MeasuringTask(Event.RESTORATION, 230, 50);
    Measured gap =
        assertInstanceOf(
            Measured.class, TransferMeasurement.measure(sketch.capture(), restoration));
    assertEquals(backMillis - lostMillis, gap.transferMillis(), gap.uncertaintyMillis());
    assertTrue(gap.uncertaintyMillis() < 0.03, gap.sentence());
  }

  /** A quasi-square output that is let go while it rests: any instant of the rest may be it. */
  @ParameterizedTest
  @ValueSource(doubles = {-0.6e-3, 0.1e-3, 1.1e-3})
  void aLossWithinARestIsKnownToTheRest(double sinceCrossingSeconds) {
    double lostSeconds = 10e-3 + sinceCrossingSeconds;
    sketch.with(
        ChannelRole.OUTPUT,
        NOISE_VOLTS,
        seconds -> {
          if (seconds < lostSeconds) {
            return quasiSquare(seconds);
          }
          return seconds < 22.013e-3 ? 0 : inverter(seconds);
        });
    MeasuringTask restoration = new MeasuringTask(Event.RESTORATION, 230, 50);
    Measured gap =
        assertInstanceOf(
            Measured.class, TransferMeasurement.measure(sketch.capture(), restoration));
    assertEquals(22.013 - 1e3 * lostSeconds, gap.transferMillis(), gap.uncertaintyMillis());
    assertTrue(gap.uncertaintyMillis() > 1, gap.sentence());
    assertTrue(gap.budget().isInRest("loss"));
  }

  /** An inverter that dies soon after it has come: its gap is told, and that it is dead. */
  @Test
  void anOutputThatComesAndDiesIsInterruptedOnceMore() {
    Measured gap =
        assertInstanceOf(
            Measured.class,
            outcome(
                seconds -> {
                  if (seconds < LOSS_SECONDS) {
                    return mains(seconds);
                  }
                  boolean isFed = seconds > RETURN_SECONDS && seconds < RETURN_SECONDS + 45e-3;
                  return isFed ? inverter(seconds) : 0;
                }));
    assertGap(1e3 * (RETURN_SECONDS - LOSS_SECONDS), gap);
    assertTrue(gap.furtherInterruptions().isOpen());
  }

  /** Without models about it that show the gap, nothing is told of it. */
  @Test
  void aLoadThatLiesStillIsNeverUninterrupted() {
    double jumped = LOSS_SECONDS - 7.4e-3;
    Outcome outcome =
        outcome(
            gap(
                seconds -> mains(seconds) + (Math.abs(seconds - jumped) < 0.2e-3 ? 250 : 0),
                SketchedCapture::inverter));
    assertNotEquals(Outcome.Kind.NO_INTERRUPTION, outcome.kind(), outcome.sentence());
  }

  private static double quasiSquare(double seconds) {
    double cycle = 50 * seconds - Math.floor(50 * seconds);
    double half = cycle < 0.5 ? cycle : cycle - 0.5;
    boolean isFed = half > 0.0875 && half < 0.4125;
    return isFed ? Math.signum(0.5 - cycle) * 0.9 * SketchedCapture.PEAK_VOLTS : 0;
  }

  /** A break that begins over a cycle after mains came back is another one, not a bounce. */
  @ParameterizedTest
  @CsvSource({"4.3, 27", "12, 27", "12, 60", "35, 27", "35, 60"})
  void mainsBetweenTwoBreaksIsAReturn(double firstMillis, double fedMillis) {
    double madeSeconds = LOSS_SECONDS + 1e-3 * firstMillis;
    double secondSeconds = madeSeconds + 1e-3 * fedMillis;
    Measured gap =
        assertInstanceOf(
            Measured.class,
            outcome(
                seconds -> {
                  if (seconds < LOSS_SECONDS) {
                    return mains(seconds);
                  }
                  if (seconds < madeSeconds) {
                    return 0;
                  }
                  if (seconds < secondSeconds) {
                    return mains(seconds);
                  }
                  return seconds < secondSeconds + 9.4e-3 ? 0 : inverter(seconds);
                }));
    assertGap(firstMillis, gap);
    FurtherInterruptions further = gap.furtherInterruptions();
    assertEquals(1, further.count());
    double longest = Objects.requireNonNull(further.longestMillis());
    assertEquals(9.4, longest, further.uncertaintyMillis());
  }

  /** A file whose samples stand three times each has no finer instants than they have. */
  @Test
  void heldSamplesAreMeasuredAsTheyWereTaken() {
    SketchedCapture taken = new SketchedCapture(new TimeAxis(-0.25, 60e-6, 16_667, 0));
    taken.with(
        ChannelRole.OUTPUT, NOISE_VOLTS, gap(SketchedCapture::mains, seconds -> inverter(seconds)));
    Measured once =
        assertInstanceOf(Measured.class, TransferMeasurement.measure(taken.capture(), TASK));
    double[] volts = taken.capture().output().volts();
    Measured held =
        assertInstanceOf(
            Measured.class, outcome(seconds -> volts[(int) ((seconds + 0.25 + 1e-9) / 60e-6)], 0));
    assertEquals(once.transferMillis(), held.transferMillis(), 1e-9);
    assertEquals(once.uncertaintyMillis(), held.uncertaintyMillis(), 1e-9);
  }

  /** Long after a step of frequency the cycles differ, and the supply goes on. */
  @ParameterizedTest
  @CsvSource({"481", "112", "171", "1744", "2373"})
  void anotherFrequencyIsNoGapAndNoDisturbance(long seed) {
    KnownCapture known = Kind.CONVERTED.capture(seed);
    Outcome outcome = TransferMeasurement.measure(known.capture(), known.task());
    NoInterruption none = assertInstanceOf(NoInterruption.class, outcome, outcome.sentence());
    assertTrue(none.proof().contains("frequency"), none.proof());
  }

  /** A gap in the first cycles bends the frequency that a fit of them has. */
  @ParameterizedTest
  @CsvSource({"618", "860"})
  void aGapTooSoonIsNoStepOfTheFrequency(long seed) {
    KnownCapture known = Kind.TOO_FEW_CYCLES.capture(seed);
    Outcome outcome = TransferMeasurement.measure(known.capture(), known.task());
    assertEquals(Outcome.Kind.REFUSED, outcome.kind(), outcome.sentence());
  }

  /** It crosses zero away from where it was expected, and is no dead load there. */
  @ParameterizedTest
  @CsvSource({"241", "249", "419", "581"})
  void anInverterThatWalksItsFrequencyDoesNotBreak(long seed) {
    assertEquals(0, breaks(Kind.WALKING_FREQUENCY.capture(seed)));
  }

  @Test
  void aLongBreakIsOneEvenIfTheLoadIsNotQuiteStill() {
    assertEquals(1, breaks(HeldOutKind.LONG_SECOND_BREAK.capture(155)));
  }

  /** At a low rate, in noise and hum about zero, it is a dead load all the same. */
  @ParameterizedTest
  @CsvSource({"1", "2", "3"})
  void aShortBreakInNoiseIsOne(int millis) {
    double broken = 0.1 + 1e-3 * millis;
    DoubleUnaryOperator plain = gap(SketchedCapture::mains, SketchedCapture::inverter);
    sketch.with(
        ChannelRole.OUTPUT,
        20,
        seconds ->
            seconds > broken && seconds < broken + 2.3e-3
                ? 10 * Math.sin(2 * Math.PI * 150 * seconds)
                : plain.applyAsDouble(seconds));
    Outcome outcome = TransferMeasurement.measure(sketch.capture(), TASK);
    Measured gap = assertInstanceOf(Measured.class, outcome, outcome.sentence());
    assertEquals(1, gap.furtherInterruptions().count(), outcome.sentence());
  }

  /** Notches in each half cycle are no gap that bends the frequency. */
  @Test
  void aFrequencyThatStepsIsAProofOnNotchedMainsToo() {
    Outcome outcome =
        outcome(
            seconds -> {
              double supplied = seconds < 0.2 ? mains(seconds) : sine(seconds - 0.2, 50.2, 0);
              double half = (seconds + 1.5e-3) / 10e-3;
              boolean isNotched = seconds < 0.2 && 10e-3 * (half - Math.floor(half)) < 2e-4;
              return (isNotched ? 0.8 : 1) * supplied;
            });
    NoInterruption none = assertInstanceOf(NoInterruption.class, outcome, outcome.sentence());
    assertTrue(none.proof().contains("frequency"), none.proof());
  }

  /** Its first and its last moment are still those of the supply about it. */
  @ParameterizedTest
  @CsvSource({"441", "623"})
  void aBreakOfTwoMillisecondsIsOne(long seed) {
    assertEquals(1, breaks(Kind.SECOND_INTERRUPTION.capture(seed)));
  }

  /** At its beginning it swings by less than a load does that lies still. */
  @ParameterizedTest
  @CsvSource({"99", "781"})
  void aSupplyThatComesUpDoesNotBreak(long seed) {
    assertEquals(0, breaks(Kind.RAMPED.capture(seed)));
  }

  private static int breaks(KnownCapture known) {
    Outcome outcome = TransferMeasurement.measure(known.capture(), known.task());
    Measured gap = assertInstanceOf(Measured.class, outcome, outcome.sentence());
    return gap.furtherInterruptions().count();
  }

  /**
   * The output comes back at its crossing: since when it feeds is told worse than the gap is long.
   */
  @Test
  void aLoadThatLiesStillAwayFromItsSupplyIsLeft() {
    KnownCapture known = Kind.RIPPLE_ALIASED.capture(657);
    Outcome outcome = TransferMeasurement.measure(known.capture(), known.task());
    Measured gap = assertInstanceOf(Measured.class, outcome, outcome.sentence());
    assertEquals(known.truth().transferMillis(), gap.transferMillis(), gap.uncertaintyMillis());
  }

  /** A ring at a crossing lies at zero for a while, and the same supply goes on behind it. */
  @Test
  void aRingOfASupplyThatGoesOnIsNoGap() {
    KnownCapture known = Kind.RING_BEFORE.capture(773);
    Outcome outcome = TransferMeasurement.measure(known.capture(), known.task());
    Measured gap = assertInstanceOf(Measured.class, outcome, outcome.sentence());
    assertEquals(known.truth().transferMillis(), gap.transferMillis(), 0.1, outcome.sentence());
    assertEquals(0, gap.furtherInterruptions().count(), outcome.sentence());
  }
}
