package mainsgap.scope;

import java.util.Map;
import java.util.Optional;
import mainsgap.scope.EventSignal.Follows;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.Event;
import org.jspecify.annotations.Nullable;

/** Finds what a trigger can watch on this rig, and sets it. */
final class TriggerPlanner {
  private final CaptureRequest request;
  private final CaptureTimes times;
  private final TriggerWords words;

  TriggerPlanner(CaptureRequest request, CaptureTimes times) {
    this.request = request;
    this.times = times;
    this.words = new TriggerWords(request, times);
  }

  /** The role whose channel is watched; null where there is none to watch. */
  @Nullable ChannelRole source(CatchMethod method) {
    Map<ChannelRole, ?> inputs = request.inputs();
    boolean back = request.event() == Event.RESTORATION;
    boolean seesMains = inputs.containsKey(ChannelRole.MAINS);
    if (method == CatchMethod.EDGE_TRIGGER) {
      return inputs.containsKey(ChannelRole.MARKER)
          ? ChannelRole.MARKER
          : back && seesMains ? ChannelRole.MAINS : null;
    }
    return method.awaitsQuiet()
        ? seesMains && !back ? ChannelRole.MAINS : ChannelRole.OUTPUT
        : null;
  }

  /** What an edge comes from; empty where the rig has nothing with an edge. */
  Optional<EventSignal> signal(CatchMethod method) {
    if (method == CatchMethod.EXTERNAL_TRIGGER) {
      return Optional.ofNullable(request.external());
    }
    ChannelRole source = source(method);
    if (source == ChannelRole.MAINS) {
      double level = CaptureTimes.LEVEL_OF_PEAK * peakVolts(ChannelRole.MAINS);
      return Optional.of(new EventSignal(Follows.MAINS, 0, 2 * level, true, 0));
    }
    return Optional.ofNullable(source == null ? null : request.marker());
  }

  /**
   * The trigger and its record.
   *
   * @throws ScopeException with a sentence where the rig has nothing that it could watch
   */
  TriggerPlan plan(CatchMethod method) {
    return method.awaitsQuiet() ? quiet(method) : edge(method);
  }

  private TriggerPlan quiet(CatchMethod method) {
    boolean onMains = source(method) == ChannelRole.MAINS;
    ChannelRole source = onMains ? ChannelRole.MAINS : ChannelRole.OUTPUT;
    BlindZone zone = times.blindZone(method);
    PlannedTrigger trigger =
        PlannedTrigger.quiet(
            method, source, zone.levelPart() * peakVolts(source), zone.timeSeconds());
    return new TriggerPlan(
        trigger,
        times.beforeSeconds() + zone.timeSeconds(),
        times.afterSeconds(),
        times.unitWaitSeconds(),
        onMains ? Blindness.NONE : Blindness.of(zone, times.ratedSeconds()),
        words.ofQuiet(trigger, source, zone));
  }

  private TriggerPlan edge(CatchMethod method) {
    EventSignal signal =
        signal(method).orElseThrow(() -> new ScopeException(words.noSignal(method)));
    PlannedTrigger trigger =
        new PlannedTrigger(
            method,
            source(method),
            signal.levelVolts(),
            signal.delaySeconds(),
            signal.slope(request.event()));
    boolean withMains = signal.follows() == Follows.MAINS;
    // a contact moves at some time within the transfer, mains before all of it
    double late = signal.delaySeconds() + (withMains ? 0 : times.longestTransferSeconds());
    double check = times.unitWaitSeconds();
    return new TriggerPlan(
        trigger,
        times.beforeSeconds() + late,
        times.afterSeconds() + (withMains ? check : 0),
        withMains ? 0 : check,
        Blindness.NONE,
        words.ofEdge(trigger, signal));
  }

  private double peakVolts(ChannelRole role) {
    CaptureRequest.Input input = request.inputs().get(role);
    Double expected = input == null ? null : input.expectedPeakVolts();
    return expected == null ? request.nominalPeakVolts() : expected;
  }
}
