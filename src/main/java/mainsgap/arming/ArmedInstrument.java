package mainsgap.arming;

import static mainsgap.scope.AcquisitionState.COMPLETE;
import static mainsgap.scope.AcquisitionState.RECORDING;
import static mainsgap.scope.AcquisitionState.WATCHING;

import java.time.Duration;
import java.time.Instant;
import java.util.EnumSet;
import java.util.Set;
import mainsgap.scope.AcquisitionState;
import mainsgap.scope.CapturePlan;
import mainsgap.scope.CatchMethod;
import mainsgap.scope.Oscilloscope;
import mainsgap.scope.ScopeException;

/**
 * The instrument between arming and the whole record: the waits on its state. Closing makes it
 * safe: disarmed.
 */
final class ArmedInstrument implements AutoCloseable {
  /** What an instrument may take beyond the record itself: slow ones copy their memory first. */
  private static final Duration MARGIN = Duration.ofSeconds(15);

  private static final Set<AcquisitionState> WATCHES = EnumSet.of(WATCHING, RECORDING, COMPLETE);
  private static final Set<AcquisitionState> HAS_TRIGGERED = EnumSet.of(RECORDING, COMPLETE);
  private static final Set<AcquisitionState> WHOLE = EnumSet.of(COMPLETE);

  private final Oscilloscope instrument;
  private final CapturePlan plan;
  private final Duration triggerWait;
  private final String awaited;
  private final double cycleSeconds;
  private final Waits waits;

  ArmedInstrument(Oscilloscope instrument, LoopPlan plan, Waits waits) {
    this.instrument = instrument;
    this.plan = plan.capture();
    this.triggerWait = plan.pace().triggerWait();
    this.awaited =
        plan.capture().unitWaitSeconds() > 0
            ? "the unit to go back to mains, which it checks first"
            : "the trigger";
    this.cycleSeconds = plan.task().cycleSeconds();
    this.waits = waits;
  }

  /** Arms, and returns once the event may come. */
  void arm() {
    instrument.arm();
    if (!reaches(WATCHES, "the instrument to be ready", recordLimit())) {
      throw new ScopeException(
          "the instrument was armed and did not watch for the event within "
              + Sentences.of(recordLimit())
              + ": arm it again, with nobody at its front panel");
    }
  }

  /** Whether the event, or the forced record in which it lies, was caught within the limit. */
  boolean triggers() {
    if (plan.method() == CatchMethod.FORCED_RECORD) {
      // Its end is the hand's limit; what the instrument takes beyond it is waited for apart.
      if (!reaches(WHOLE, "the switch to move within the record", record())) {
        complete();
      }
      return true;
    }
    if (plan.method() == CatchMethod.BACK_TO_BACK_RECORDS) {
      return isInOneOfTheRecords();
    }
    return reaches(HAS_TRIGGERED, awaited, triggerWait);
  }

  /** Takes record after record until the event is in one; the last one stays in the instrument. */
  private boolean isInOneOfTheRecords() {
    Instant end = waits.now().plus(triggerWait);
    while (true) {
      complete();
      if (EventInRecord.isIn(instrument.read(), cycleSeconds)) {
        return true;
      }
      if (!waits.now().isBefore(end)) {
        return false;
      }
      arm();
    }
  }

  /** Waits for the rest of the record. */
  void complete() {
    if (!reaches(WHOLE, "the rest of the record", recordLimit())) {
      throw new ScopeException(
          "the record of "
              + Sentences.of(record())
              + " was not complete within "
              + Sentences.of(recordLimit())
              + ": look at the instrument's screen, and plan a shorter record if it is slow");
    }
  }

  @Override
  public void close() {
    instrument.disarm();
  }

  private boolean reaches(Set<AcquisitionState> states, String what, Duration limit) {
    return waits.until(what, limit, () -> states.contains(instrument.state()));
  }

  private Duration record() {
    return Sentences.seconds(plan.durationSeconds());
  }

  private Duration recordLimit() {
    return record().plus(MARGIN);
  }
}
