package mainsgap.desk.pictures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import mainsgap.desk.trace.Curve;
import mainsgap.desk.trace.Gap;
import mainsgap.desk.trace.Ruler;
import mainsgap.desk.trace.Trace;
import mainsgap.desk.trace.TraceScene;
import mainsgap.signal.Capture;
import mainsgap.signal.VoltExtent;
import mainsgap.transfer.FittedSupplies;
import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.transfer.outcome.OtherChannels;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Refused;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class OutcomeSceneTest {
  private static final FittedSupplies BOTH =
      new FittedSupplies(InventedCaptures.MAINS, InventedCaptures.BACKUP);
  private static final FittedSupplies BEFORE_ALONE =
      new FittedSupplies(InventedCaptures.MAINS, null);

  @Test
  void aMeasuredGapStartsAtTheLossAndHasItsTimeAndTheDeclaredTimeFromTheSameZero() {
    TraceScene scene = scene(InventedTrials.measured(8.42, 0.05, 70), BOTH);
    assertEquals(new Gap(0, 0.00842, false, "8.420 ms ± 0.050 ms"), rounded(scene.gap()));
    assertEquals(new Ruler(0.010, 0.00005, "declared: 10 ms"), scene.ruler());
    assertEquals("loss", scene.zeroWords());
    assertEquals(-0.121, scene.span().fromSeconds(), 1e-9);
    assertEquals("", scene.remark());
  }

  @Test
  void theSupplyBeforeReachesACyclePastTheGapAndThatAfterStartsAtTheLoss() {
    TraceScene scene = scene(InventedTrials.measured(8.42, 0.05, 70), BOTH);
    assertEquals(
        List.of("mains, as fitted", "backup, as fitted"),
        scene.curves().stream().map(Curve::name).toList());
    Curve before = scene.curves().get(0);
    assertEquals(0.02842, before.span().toSeconds(), 1e-9);
    assertEquals(InventedCaptures.output(-0.05), before.volts().applyAsDouble(-0.051), 1e-6);
    Curve after = scene.curves().get(1);
    assertEquals(0, after.span().fromSeconds());
    assertEquals(InventedCaptures.output(0.101), after.volts().applyAsDouble(0.1), 1e-6);
  }

  @Test
  void withoutAReturnTheGapIsOpenAtTheEndOfTheRecord() {
    TraceScene scene = scene(InventedTrials.noReturn(278.99), BEFORE_ALONE);
    Gap gap = scene.gap();
    assertNotNull(gap);
    assertTrue(gap.open());
    assertEquals(scene.span().toSeconds(), gap.toSeconds(), 1e-9);
    assertEquals("at least 278.99 ms ± 0.10 ms", gap.label());
    assertEquals(1, scene.curves().size());
  }

  @Test
  void withoutAnInterruptionThereIsNoGapAndTheWordsSaySo() {
    TraceScene scene = scene(InventedTrials.noInterruption(), BOTH);
    assertNull(scene.gap());
    assertNotNull(scene.ruler());
    assertEquals(
        "No interruption: a gap from 0.25 ms up would have been seen. The frequency changed from"
            + " 50.00 Hz to 50.21 Hz.",
        scene.remark());
  }

  @Test
  void aRefusedCaptureIsTheTraceAloneFromTheStartOfTheRecord() {
    TraceScene scene = scene(new Refused("the output is clipped"), BOTH);
    assertEquals(0, scene.span().fromSeconds());
    assertEquals("start of record", scene.zeroWords());
    assertNull(scene.gap());
    assertNull(scene.ruler());
    assertEquals(List.of(), scene.curves());
    assertEquals("Refused: the output is clipped.", scene.remark());
  }

  @Test
  void nothingDeclaredOrZeroDeclaredIsNoRuler() {
    Capture capture = InventedCaptures.ofOutput(InventedCaptures::output);
    Outcome outcome = InventedTrials.measured(8.42, 0.05, 70);
    assertNull(OutcomeScene.of(capture, outcome, BOTH, null).ruler());
    assertNull(OutcomeScene.of(capture, outcome, BOTH, DeclaredClaim.ofMillis(0, "0 ms")).ruler());
  }

  @Test
  void theOtherChannelsFollowTheOutputAndACurrentIsDrawnByARoundFactor() {
    TraceScene scene =
        OutcomeScene.of(
            InventedCaptures.ofEveryChannel(),
            InventedTrials.measured(8.42, 0.05, 70),
            BOTH,
            InventedTrials.TEN);
    assertEquals(
        List.of("output", "mains", "second leg", "load current, 1 A drawn as 50 V"),
        scene.traces().stream().map(Trace::name).toList());
    double peak = scene.traces().get(3).envelope().extent().highestVolts();
    assertEquals(325.0 / 160 * 50, peak, 10);
  }

  @Test
  void aRoundFactorFitsAndAFlatLineKeepsItsScale() {
    VoltExtent output = new VoltExtent(-325, 325);
    assertEquals(20, RecordedTraces.factor(output, new VoltExtent(-8, 8)));
    assertEquals(0.1, RecordedTraces.factor(output, new VoltExtent(0, 1900)), 1e-12);
    assertEquals(1, RecordedTraces.factor(output, new VoltExtent(0, 0)));
    assertEquals(1, RecordedTraces.factor(output, VoltExtent.NONE));
  }

  @Test
  void theSecondLegIsTold() {
    OtherChannels others =
        new OtherChannels(
            null, OtherChannels.SecondLeg.of(InventedTrials.measured(9.1, 0.2, 70)), null, null);
    TraceScene scene = scene(InventedTrials.measured(8.42, 0.05, 70, others), BOTH);
    assertEquals("Second leg: gap of 9.10 ms ± 0.20 ms.", scene.remark());
  }

  private static TraceScene scene(Outcome outcome, FittedSupplies supplies) {
    Capture capture = InventedCaptures.ofOutput(InventedCaptures::output);
    return TracePane.sceneOf(capture, outcome, supplies, InventedTrials.TEN);
  }

  private static Gap rounded(@Nullable Gap gap) {
    assertNotNull(gap);
    return new Gap(
        gap.fromSeconds(), Math.rint(gap.toSeconds() * 1e9) / 1e9, gap.open(), gap.label());
  }
}
