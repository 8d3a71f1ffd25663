package mainsgap.transfer.outcome;

import org.jspecify.annotations.Nullable;

/** How the measurement of one capture ended. */
public sealed interface Outcome permits Measured, NoReturn, NoInterruption, Refused {

  /** The kinds of outcome, for an exhaustive switch. */
  enum Kind {
    /** A {@link Measured}. */
    MEASURED,
    /** A {@link NoReturn}. */
    NO_RETURN,
    /** A {@link NoInterruption}. */
    NO_INTERRUPTION,
    /** A {@link Refused}. */
    REFUSED
  }

  /** Which of the records this is. */
  Kind kind();

  /** Of the time that it tells, line by line; null where there is none, or it was not kept. */
  default @Nullable UncertaintyBudget budget() {
    return null;
  }

  /** What the channels beside the output tell. */
  default OtherChannels others() {
    return OtherChannels.NONE;
  }

  /** One sentence, or less, that tells the outcome to people, with units. */
  String sentence();
}
