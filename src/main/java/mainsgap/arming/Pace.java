package mainsgap.arming;

import java.time.Duration;

/**
 * The limits of a series: every wait has one.
 *
 * @param triggerWait how long an armed instrument waits for the hand, the unit and the trigger
 * @param settle how long the unit settles after the switch went back, before the next arming
 * @param pause how long mains stays on between two trials, beyond the settling
 * @param recoveryWait how long mains, and the unit's output, may take to come back
 * @param consentWait how long a person may take to let a commanded switch close
 * @param poll between two questions to the instrument
 * @param maxRepeats how many attempts of a series may be repeated, in all; at least 0
 */
public record Pace(
    Duration triggerWait,
    Duration settle,
    Duration pause,
    Duration recoveryWait,
    Duration consentWait,
    Duration poll,
    int maxRepeats) {
  /** For the hand that opens the mains switch. */
  public static final Duration TRIGGER_WAIT_FOR_LOSS = Duration.ofSeconds(60);

  /** For a person at the bench. */
  public static final Pace AT_A_BENCH =
      new Pace(
          TRIGGER_WAIT_FOR_LOSS,
          Duration.ofSeconds(10),
          Duration.ZERO,
          Duration.ofSeconds(60),
          Duration.ofMinutes(10),
          Duration.ofMillis(100),
          5);

  /** Checks that every wait can end. */
  public Pace {
    if (triggerWait.isNegative()
        || triggerWait.isZero()
        || settle.isNegative()
        || pause.isNegative()
        || recoveryWait.isNegative()
        || consentWait.isNegative()
        || poll.isNegative()
        || poll.isZero()
        || maxRepeats < 0) {
      throw new IllegalArgumentException(
          "the waits of a series are times above 0 (settling, pause, recovery and the word of a"
              + " person from 0 up) and its repeats 0 or more, found trigger "
              + triggerWait
              + ", settling "
              + settle
              + ", pause "
              + pause
              + ", recovery "
              + recoveryWait
              + ", word "
              + consentWait
              + ", poll "
              + poll
              + ", repeats "
              + maxRepeats);
    }
  }
}
