package mainsgap.scope;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import mainsgap.scope.EventSignal.Follows;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.Event;

/**
 * Which way to catch the event, where nobody wishes for one: the surest first, and of equally sure
 * ones that with the finest record. A trigger on mains itself or on a signal that follows the event
 * misses nothing and takes a short record; a forced record misses nothing but is long; a trigger on
 * the output has a blind zone; records back to back are blind between them.
 */
final class CatchChoice {
  /** On mains, where all are sure: those first that need the fewest settings. */
  private static final List<CatchMethod> ON_MAINS =
      List.of(
          CatchMethod.TIME_OUT_TRIGGER,
          CatchMethod.PULSE_WIDTH_TRIGGER,
          CatchMethod.DROPOUT_TRIGGER,
          CatchMethod.INTERVAL_TRIGGER,
          CatchMethod.WINDOW_TRIGGER);

  private final CaptureRequest request;
  private final ScopeLimits limits;
  private final CaptureTimes times;
  private final TriggerPlanner triggers;

  CatchChoice(CaptureRequest request, ScopeLimits limits, CaptureTimes times) {
    this.request = request;
    this.limits = limits;
    this.times = times;
    this.triggers = new TriggerPlanner(request, times);
  }

  /** The way that this instrument and this rig allow. */
  CatchMethod method() {
    return request.event() == Event.LOSS ? forLoss() : forRestoration();
  }

  private CatchMethod forLoss() {
    return first(ON_MAINS, method -> triggers.source(method) == ChannelRole.MAINS)
        .or(() -> onSignal(Follows.MAINS))
        .or(() -> onSignal(Follows.UNIT))
        .or(() -> forced(RecordSize.COARSEST_SECONDS))
        .or(this::onOutput)
        .orElse(CatchMethod.BACK_TO_BACK_RECORDS);
  }

  private CatchMethod forRestoration() {
    return onSignal(Follows.UNIT)
        .or(() -> throughTheCheck(ForcedRecord.GOOD_INTERVAL_SECONDS))
        .or(() -> throughTheCheck(RecordSize.COARSEST_SECONDS))
        .or(this::onOutput)
        .orElse(CatchMethod.BACK_TO_BACK_RECORDS);
  }

  /** A record from the move of the switch until the unit has gone back. */
  private Optional<CatchMethod> throughTheCheck(double coarsestSeconds) {
    return onSignal(Follows.MAINS)
        .filter(method -> triggers.plan(method).size(coarsestSeconds, limits) != null)
        .or(() -> forced(coarsestSeconds));
  }

  private Optional<CatchMethod> onSignal(Follows follows) {
    return first(
        List.of(CatchMethod.EDGE_TRIGGER, CatchMethod.EXTERNAL_TRIGGER),
        method ->
            triggers.signal(method).filter(signal -> signal.follows() == follows).isPresent());
  }

  private Optional<CatchMethod> forced(double coarsestSeconds) {
    boolean fits = ForcedRecord.of(request, times).size(limits, coarsestSeconds) != null;
    return fits ? Optional.of(CatchMethod.FORCED_RECORD) : Optional.empty();
  }

  /** The one with the smallest blind zone. */
  private Optional<CatchMethod> onOutput() {
    return ON_MAINS.stream()
        .filter(limits.methods()::contains)
        .min(Comparator.comparingDouble(times::quietSeconds));
  }

  private Optional<CatchMethod> first(List<CatchMethod> methods, Predicate<CatchMethod> fits) {
    return methods.stream().filter(limits.methods()::contains).filter(fits).findFirst();
  }
}
