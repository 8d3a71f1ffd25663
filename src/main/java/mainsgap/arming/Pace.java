package mainsgap.arming;

import java.time.Duration;

/**
 * The limits of a series: every wait has one.
 *
 * @param triggerWait how long an armed instrument waits for the hand and the trigger
 * @param settle how long the unit settles after mains is back, before the next arming
 * @param recoveryWait how long mains, and the unit's output, may take to come back
 * @param poll between two questions to the instrument
 * @param maxRepeats how many attempts of a series may be repeated, in all; at least 0
 */
public record Pace(
    Duration triggerWait, Duration settle, Duration recoveryWait, Duration poll, int maxRepeats) {

  /** For a hand on the switch. */
  public static final Pace BY_HAND =
      new Pace(
          Duration.ofSeconds(60),
          Duration.ofSeconds(10),
          Duration.ofSeconds(60),
          Duration.ofMillis(100),
          5);

  /** Checks that every wait can end. */
  public Pace {
    if (triggerWait.isNegative()
        || triggerWait.isZero()
        || settle.isNegative()
        || recoveryWait.isNegative()
        || poll.isNegative()
        || poll.isZero()
        || maxRepeats < 0) {
      throw new IllegalArgumentException(
          "the waits of a series are times above 0 (settling and recovery from 0 up) and its"
              + " repeats 0 or more, found trigger "
              + triggerWait
              + ", settling "
              + settle
              + ", recovery "
              + recoveryWait
              + ", poll "
              + poll
              + ", repeats "
              + maxRepeats);
    }
  }
}
