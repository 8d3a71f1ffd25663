package mainsgap.simulation;

import org.jspecify.annotations.Nullable;

/**
 * What truly happened at one event, on the time axis of the record that caught it. The wire never
 * tells it, and no room that measures may ask for it.
 *
 * @param change what the hand did
 * @param number which opening (or closing) of the bench it was, from 1
 * @param kind what the load saw
 * @param lossSeconds when the load first left the supply that it was following: after an arc, its
 *     extinction; for {@link Kind#NO_GAP} when that supply changed
 * @param lastOpeningSeconds the last opening of the contact that fed the load; {@code lossSeconds}
 *     where it did not bounce
 * @param firstReturnSeconds the first make of the supply after; null where there is none
 * @param returnSeconds when the load began to be fed without a break: the last make of a bouncing
 *     contact; null where there is none
 * @param pointOnWaveDegrees the angle of the supply before at the loss, 0 to 360
 * @param phaseStepDegrees the fundamental of the supply after minus that before, both at the
 *     return, -180 (exclusive) to 180; null where there is no return
 * @param supplyBeforeHertz the frequency of the supply before
 * @param supplyAfterHertz the frequency of the supply after; null where there is none
 */
public record TrialTruth(
    Change change,
    int number,
    Kind kind,
    double lossSeconds,
    double lastOpeningSeconds,
    @Nullable Double firstReturnSeconds,
    @Nullable Double returnSeconds,
    double pointOnWaveDegrees,
    @Nullable Double phaseStepDegrees,
    double supplyBeforeHertz,
    @Nullable Double supplyAfterHertz) {

  /** What the hand on the mains switch did. */
  public enum Change {
    /** It opened the mains: the load goes to the backup. */
    OPENING,
    /** It closed the mains: the load goes back to it. */
    CLOSING
  }

  /** What the load saw. */
  public enum Kind {
    /** A gap with both its ends. */
    GAP,
    /** A gap that does not end. */
    NO_RETURN,
    /** The supply changed without a gap. */
    NO_GAP
  }

  /** Return minus loss in milliseconds: 0 without a gap, null without a return. */
  public @Nullable Double transferMillis() {
    return switch (kind) {
      case NO_GAP -> 0.0;
      case NO_RETURN -> null;
      case GAP -> returnSeconds == null ? null : (returnSeconds - lossSeconds) * 1e3;
    };
  }

  /** Whether the contact that fed the load opened more than once. */
  public boolean bounced() {
    return lastOpeningSeconds > lossSeconds;
  }

  /** The same on an axis whose 0 s lies {@code seconds} later on this one. */
  TrialTruth seenFrom(double seconds) {
    return new TrialTruth(
        change,
        number,
        kind,
        lossSeconds - seconds,
        lastOpeningSeconds - seconds,
        firstReturnSeconds == null ? null : firstReturnSeconds - seconds,
        returnSeconds == null ? null : returnSeconds - seconds,
        pointOnWaveDegrees,
        phaseStepDegrees,
        supplyBeforeHertz,
        supplyAfterHertz);
  }
}
