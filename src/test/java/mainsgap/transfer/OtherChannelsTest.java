package mainsgap.transfer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.Event;
import mainsgap.signal.TimeAxis;
import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.transfer.claim.TrialVerdict;
import mainsgap.transfer.outcome.Figures;
import mainsgap.transfer.outcome.Judgement;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.OtherChannels;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.OutcomeOfFigures;
import mainsgap.transfer.outcome.Verdict;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Captures of more than the output, whose truth is written down here. */
class OtherChannelsTest {
  private static final TimeAxis TIME = new TimeAxis(0, 5e-6, 100_000, 0);
  private static final MeasuringTask TASK = new MeasuringTask(Event.LOSS, 230, 50);
  private static final DeclaredClaim TEN_MILLIS = DeclaredClaim.ofMillis(10, "10ms");
  private static final double LOSS_SECONDS = 0.1512;

  private final SketchedCapture sketch = new SketchedCapture(TIME);

  private static double mainsVolts(double seconds) {
    return SketchedCapture.PEAK_VOLTS * Math.sin(2 * Math.PI * 50 * seconds);
  }

  private static double inverterVolts(double seconds) {
    return SketchedCapture.PEAK_VOLTS * Math.sin(2 * Math.PI * 50.2 * seconds + 1.2);
  }

  /** Mains up to the loss, nothing for so long, the inverter from then on. */
  private static DoubleUnaryOperator gapOf(double millis) {
    return seconds -> {
      if (seconds < LOSS_SECONDS) {
        return mainsVolts(seconds);
      }
      return seconds < LOSS_SECONDS + millis / 1e3 ? 0 : inverterVolts(seconds);
    };
  }

  private void with(ChannelRole role, double noise, DoubleUnaryOperator signal) {
    sketch.with(role, noise, signal);
  }

  private Measured measured() {
    Outcome outcome = outcome();
    assertEquals(Outcome.Kind.MEASURED, outcome.kind(), outcome.sentence());
    return (Measured) outcome;
  }

  private Outcome outcome() {
    return TransferMeasurement.measure(sketch.capture(), TASK);
  }

  private Judgement judged() {
    return TrialVerdict.judge(outcome(), TEN_MILLIS).orElseThrow();
  }

  private static double present(@Nullable Double value) {
    assertNotNull(value);
    return value;
  }

  @Test
  void eachChannelThatCannotTellSaysWhy() {
    with(ChannelRole.OUTPUT, 1, gapOf(8));
    with(ChannelRole.MAINS, 0.1, seconds -> gapOf(1e6).applyAsDouble(seconds) / 10);
    with(ChannelRole.MARKER, 1, seconds -> 5);
    with(ChannelRole.LOAD_CURRENT, 0, seconds -> 0);

    List<String> said = SilentChannels.of(sketch.capture(), TASK, measured());

    assertEquals(3, said.size(), said.toString());
    assertEquals(
        "mains channel: cannot tell: 23.00 V RMS at the record's start, nominal 230.0 V: is its"
            + " probe factor right?",
        said.get(0));
    assertTrue(said.get(1).startsWith("load current channel: cannot tell"), said.get(1));
    assertTrue(said.get(2).startsWith("marker channel: cannot tell"), said.get(2));
  }

  @Test
  void channelsThatTellAreNotSilent() {
    with(ChannelRole.OUTPUT, 1, gapOf(8));
    with(ChannelRole.MAINS, 1, gapOf(1e6));
    with(ChannelRole.MARKER, 0.1, seconds -> seconds < LOSS_SECONDS ? 0 : 5);

    assertEquals(List.of(), SilentChannels.of(sketch.capture(), TASK, measured()));
  }

  @Test
  void theTimeThatTheUnitHeldTheLoadAfterMainsWasLostIsTold() {
    with(ChannelRole.OUTPUT, 1, gapOf(8));
    with(
        ChannelRole.MAINS, 1, seconds -> seconds < LOSS_SECONDS - 5.3e-3 ? mainsVolts(seconds) : 0);
    assertEquals(5.3, present(measured().others().holdThroughMillis()), 0.02);
  }

  @Test
  void withoutAMainsChannelNothingIsSaidOfTheHold() {
    with(ChannelRole.OUTPUT, 1, gapOf(8));
    assertEquals(OtherChannels.NONE, measured().others());
  }

  @Test
  void aBounceOfTheSwitchIsProvedOnTheMainsChannel() {
    DoubleUnaryOperator bouncing =
        seconds -> {
          boolean open =
              seconds >= LOSS_SECONDS
                  && !(seconds > LOSS_SECONDS + 1e-3 && seconds < LOSS_SECONDS + 2e-3);
          return open ? 0 : mainsVolts(seconds);
        };
    with(
        ChannelRole.OUTPUT,
        1,
        seconds ->
            seconds < LOSS_SECONDS + 8e-3
                ? bouncing.applyAsDouble(seconds)
                : inverterVolts(seconds));
    with(ChannelRole.MAINS, 1, bouncing);
    Measured found = measured();
    assertEquals(2, 1e3 * (found.lastOpeningSeconds() - found.lossSeconds()), 0.05);
  }

  @Test
  void aBounceThatMainsDoesNotShowIsNotTheSwitchsAndLeavesNoDoubt() {
    DoubleUnaryOperator remade =
        seconds ->
            seconds > LOSS_SECONDS + 1e-3 && seconds < LOSS_SECONDS + 2e-3
                ? mainsVolts(seconds)
                : gapOf(11).applyAsDouble(seconds);
    with(ChannelRole.OUTPUT, 1, remade);
    assertEquals(Verdict.INCONCLUSIVE, judged().verdict());
    with(ChannelRole.MAINS, 1, seconds -> seconds < LOSS_SECONDS ? mainsVolts(seconds) : 0);
    assertEquals(Verdict.FAIL, judged().verdict());
  }

  @Test
  void theWorseOfTwoLegsIsJudged() {
    with(ChannelRole.OUTPUT, 1, gapOf(8));
    with(ChannelRole.SECOND_LEG, 1, seconds -> -gapOf(12.4).applyAsDouble(seconds));
    OtherChannels.SecondLeg leg = measured().others().secondLeg();
    assertNotNull(leg);
    assertEquals(12.4, present(leg.transferMillis()), 0.05);
    assertEquals(Verdict.FAIL, judged().verdict());
    assertTrue(judged().reason().startsWith("second leg: 12.4"), judged().reason());
  }

  @Test
  void aLegThatCannotBeMeasuredForbidsAPass() {
    with(ChannelRole.OUTPUT, 1, gapOf(8));
    with(ChannelRole.SECOND_LEG, 1, seconds -> 0.1 * gapOf(8).applyAsDouble(seconds));
    assertEquals(Verdict.INCONCLUSIVE, judged().verdict());
    assertTrue(judged().reason().contains("second leg: not measured: "), judged().reason());
  }

  @Test
  void aLegThatNeverReturnsFails() {
    with(ChannelRole.OUTPUT, 1, gapOf(8));
    with(ChannelRole.SECOND_LEG, 1, seconds -> seconds < LOSS_SECONDS ? mainsVolts(seconds) : 0);
    assertEquals(Verdict.FAIL, judged().verdict());
    assertTrue(judged().reason().contains("second leg: no return"), judged().reason());
  }

  @Test
  void aLegIsJudgedAlsoWhereTheOutputRidesThrough() {
    with(ChannelRole.OUTPUT, 1, OtherChannelsTest::mainsVolts);
    with(ChannelRole.MAINS, 1, gapOf(1e6));
    with(ChannelRole.SECOND_LEG, 1, gapOf(100));
    assertEquals(Outcome.Kind.NO_INTERRUPTION, outcome().kind());
    assertEquals(Verdict.FAIL, judged().verdict());
    assertTrue(judged().reason().startsWith("second leg: 100.0"), judged().reason());
  }

  @Test
  void aLegThatRidesThroughIsProvedByMainsAndPasses() {
    with(ChannelRole.OUTPUT, 1, gapOf(8));
    with(ChannelRole.MAINS, 1, gapOf(1e6));
    with(ChannelRole.SECOND_LEG, 1, OtherChannelsTest::mainsVolts);
    OtherChannels.SecondLeg leg = outcome().others().secondLeg();
    assertNotNull(leg);
    assertTrue(leg.isUninterrupted(), String.valueOf(leg.refused()));
    assertEquals(Verdict.PASS, judged().verdict());
  }

  @Test
  void aLaterBreakOfTheSecondLegIsJudgedToo() {
    with(ChannelRole.OUTPUT, 1, gapOf(8));
    with(
        ChannelRole.SECOND_LEG,
        1,
        seconds -> seconds > 0.3 && seconds < 0.33 ? 0 : gapOf(8).applyAsDouble(seconds));
    assertEquals(Verdict.FAIL, judged().verdict());
    assertTrue(judged().reason().startsWith("second leg: further"), judged().reason());
  }

  @Test
  void otherChannelsAreToldWhereTheOutputNeverReturns() {
    with(ChannelRole.OUTPUT, 1, seconds -> seconds < LOSS_SECONDS ? mainsVolts(seconds) : 0);
    with(
        ChannelRole.MAINS, 1, seconds -> seconds < LOSS_SECONDS - 5.3e-3 ? mainsVolts(seconds) : 0);
    with(ChannelRole.MARKER, 0.1, seconds -> seconds < LOSS_SECONDS ? 0 : 5);
    assertEquals(Outcome.Kind.NO_RETURN, outcome().kind());
    assertEquals(5.3, present(outcome().others().holdThroughMillis()), 0.02);
    assertNotNull(outcome().others().markerSeconds());
  }

  @Test
  void theSwitchHasNotBouncedWhereMainsIsLostAgainMuchLater() {
    with(ChannelRole.OUTPUT, 1, gapOf(12));
    with(
        ChannelRole.MAINS,
        1,
        seconds ->
            seconds < LOSS_SECONDS || (seconds > 0.3 && seconds < 0.4) ? mainsVolts(seconds) : 0);
    Measured found = measured();
    assertEquals(found.lossSeconds(), found.lastOpeningSeconds(), 1e-4);
    assertEquals(Verdict.FAIL, judged().verdict());
  }

  @Test
  void noiseIsNoCurrentOfALoad() {
    with(ChannelRole.OUTPUT, 1, gapOf(8));
    with(ChannelRole.LOAD_CURRENT, 0.002, seconds -> 0);
    assertNull(measured().others().loadCurrentAfterPercent());
    with(ChannelRole.LOAD_CURRENT, 0.002, seconds -> 5);
    assertNull(measured().others().loadCurrentAfterPercent());
  }

  @Test
  void theOffsetOfAClampIsNoCurrent() {
    with(ChannelRole.OUTPUT, 1, gapOf(8));
    with(
        ChannelRole.LOAD_CURRENT,
        0.001,
        seconds -> 3 + (seconds < LOSS_SECONDS ? mainsVolts(seconds) / 500 : 0));
    assertEquals(false, measured().others().loadRodeThrough());
  }

  @Test
  void aLoadThatDrawsItsCurrentAgainRodeThrough() {
    with(ChannelRole.OUTPUT, 1, gapOf(8));
    with(ChannelRole.LOAD_CURRENT, 0.001, seconds -> gapOf(8).applyAsDouble(seconds) / 500);
    assertEquals(100, present(measured().others().loadCurrentAfterPercent()), 1);
    assertEquals(true, measured().others().loadRodeThrough());
  }

  @Test
  void aLoadThatTrippedDidNotRideThrough() {
    with(ChannelRole.OUTPUT, 1, gapOf(8));
    with(
        ChannelRole.LOAD_CURRENT,
        0.001,
        seconds -> seconds < LOSS_SECONDS ? mainsVolts(seconds) / 500 : 0);
    Boolean rode = measured().others().loadRodeThrough();
    assertNotNull(rode);
    assertFalse(rode);
  }

  @Test
  void aMarkerTellsWhenItChangedAndAQuietOneNothing() {
    with(ChannelRole.OUTPUT, 1, gapOf(8));
    with(ChannelRole.MARKER, 0.1, seconds -> seconds < LOSS_SECONDS + 1.7e-3 ? 5 : 0);
    assertEquals(LOSS_SECONDS + 1.7e-3, present(measured().others().markerSeconds()), 5e-6);
    with(ChannelRole.MARKER, 0.1, seconds -> 5);
    assertNull(measured().others().markerSeconds());
  }

  @Test
  void aSpikeOfTheMarkerIsNoChange() {
    with(ChannelRole.OUTPUT, 1, gapOf(8));
    with(
        ChannelRole.MARKER,
        0.1,
        seconds -> seconds < LOSS_SECONDS && Math.abs(seconds - 0.1) > 4e-6 ? 5 : 0);
    assertEquals(LOSS_SECONDS, present(measured().others().markerSeconds()), 5e-6);
  }

  @Test
  void whatTheyTellIsStoredAndComesBack() {
    with(ChannelRole.OUTPUT, 1, gapOf(8));
    with(ChannelRole.MAINS, 1, seconds -> seconds < LOSS_SECONDS ? mainsVolts(seconds) : 0);
    with(ChannelRole.SECOND_LEG, 1, gapOf(9));
    with(ChannelRole.LOAD_CURRENT, 0.001, seconds -> gapOf(8).applyAsDouble(seconds) / 500);
    Measured found = measured();
    Outcome back = OutcomeOfFigures.of(Figures.of(found, null, 230), found.budget());
    assertEquals(found.others(), ((Measured) back).others());
  }
}
