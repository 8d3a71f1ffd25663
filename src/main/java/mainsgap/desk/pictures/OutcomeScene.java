package mainsgap.desk.pictures;

import java.util.ArrayList;
import java.util.List;
import mainsgap.desk.trace.Curve;
import mainsgap.desk.trace.Ruler;
import mainsgap.desk.trace.TimeSpan;
import mainsgap.desk.trace.Trace;
import mainsgap.desk.trace.TraceScene;
import mainsgap.signal.Capture;
import mainsgap.signal.Event;
import mainsgap.signal.PeriodicModel;
import mainsgap.transfer.FittedSupplies;
import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.transfer.outcome.Outcome;
import org.jspecify.annotations.Nullable;

/** A measured capture as what a picture of traces shows. Pure. */
final class OutcomeScene {
  private static final double USUAL_CYCLE_SECONDS = 0.02;

  private OutcomeScene() {}

  /** Reads every sample. */
  static TraceScene of(
      Capture capture, Outcome outcome, FittedSupplies supplies, @Nullable DeclaredClaim claim) {
    Told told = Told.of(outcome, capture.time());
    List<Trace> traces = RecordedTraces.of(capture, told.zeroSeconds());
    PeriodicModel before = supplies.before();
    double cycleSeconds =
        before == null ? USUAL_CYCLE_SECONDS : 1 / Math.abs(before.frequencyHertz());
    TraceScene scene =
        TraceScene.of(traces)
            .withCycle(cycleSeconds)
            .withWords(told.zeroWords(), "V")
            .withGap(told.gap())
            .withRemark(told.remark());
    return told.event() == null
        ? scene
        : scene
            .withCurves(curves(told, told.event(), supplies, traces.get(0).span(), cycleSeconds))
            .withRuler(ruler(told, claim));
  }

  /** The supply before up to a cycle past the gap, that after from the loss on. */
  private static List<Curve> curves(
      Told told, Event event, FittedSupplies supplies, TimeSpan record, double cycleSeconds) {
    List<Curve> curves = new ArrayList<>();
    double end = told.gap() == null || told.gap().open() ? 0 : told.gap().toSeconds();
    double beforeEnd = Math.min(record.toSeconds(), end + cycleSeconds);
    if (supplies.before() != null && record.fromSeconds() < beforeEnd) {
      TimeSpan span = new TimeSpan(record.fromSeconds(), beforeEnd);
      String name = event == Event.LOSS ? "mains, as fitted" : "backup, as fitted";
      curves.add(Curve.of(name, supplies.before(), told.zeroSeconds(), span));
    }
    double afterStart = Math.max(0, record.fromSeconds());
    if (supplies.after() != null && afterStart < record.toSeconds()) {
      TimeSpan span = new TimeSpan(afterStart, record.toSeconds());
      String name = event == Event.LOSS ? "backup, as fitted" : "mains, as fitted";
      curves.add(Curve.of(name, supplies.after(), told.zeroSeconds(), span));
    }
    return curves;
  }

  /** None for a declared 0 ms, which has no length; a typical time judges nothing. */
  private static @Nullable Ruler ruler(Told told, @Nullable DeclaredClaim claim) {
    if (claim == null || claim.millis() == 0) {
      return null;
    }
    double guardMillis =
        claim.kind() == DeclaredClaim.Kind.TYPICAL || !Double.isFinite(told.guardMillis())
            ? 0
            : told.guardMillis();
    return new Ruler(claim.millis() * 1e-3, guardMillis * 1e-3, MillisWords.declared(claim));
  }
}
