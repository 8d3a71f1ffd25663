package mainsgap.scope;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A trigger and the record that it needs.
 *
 * @param trigger what the instrument waits for
 * @param beforeSeconds what the record must hold before the trigger
 * @param afterSeconds what it must hold after it
 * @param unitWaitSeconds what the unit may take between the move of the switch and the trigger
 * @param blindness what it cannot see
 * @param explanation one sentence each
 */
record TriggerPlan(
    PlannedTrigger trigger,
    double beforeSeconds,
    double afterSeconds,
    double unitWaitSeconds,
    Blindness blindness,
    List<String> explanation) {
  private static final double WISHED_INTERVAL_SECONDS = 5e-6;

  double neededSeconds() {
    return beforeSeconds + afterSeconds;
  }

  /** The record, no coarser than asked for; null where the memory does not hold it. */
  @Nullable RecordSize size(double coarsestSeconds, ScopeLimits limits) {
    return RecordSize.fitting(
        RoundValues.up125(neededSeconds()), WISHED_INTERVAL_SECONDS, coarsestSeconds, limits);
  }
}
