package mainsgap.arming;

import java.util.EnumSet;
import java.util.Set;

/** The states of the bench during a series, what is true in each, and where each may lead. */
public enum LoopState {
  /** The start. */
  PREFLIGHT("the instrument looks at the live signal; nothing is armed, mains is as it was found"),
  /** The prompt stands. */
  ARMED("the instrument watches for the event; the mains switch is to be moved now"),
  /** The event, or all of a forced record, is in the instrument. */
  TRIGGERED("the instrument has triggered and takes the rest of the record"),
  /** The record is on its way. */
  READING("the record is whole and is being read from the instrument"),
  /** The figures are there. */
  ANALYSED("the capture is measured and judged, and not yet in the log"),
  /** The evidence is safe. */
  LOGGED("the trial is durable in the session log"),
  /** Between two trials. */
  RECOVERING("the instrument is disarmed; the mains switch goes back and the unit settles"),
  /** The end of a series that ran through. */
  COMPLETE(
      "the instrument is disarmed, a commanded switch is off, the series is over, its log whole"),
  /** The end that the user asked for. */
  STOPPED(
      "the instrument is disarmed, a commanded switch is off (a hand's as it was left), the log is"
          + " whole"),
  /** The end that nobody asked for. */
  FAULTED(
      "the series ended by a fault that the log names; a commanded switch is off unless that is the"
          + " fault, a hand's as it was left");

  private final String truth;

  LoopState(String truth) {
    this.truth = truth;
  }

  /** The table: where each state may lead. A capture that was read is logged before all else. */
  public Set<LoopState> next() {
    return switch (this) {
      case PREFLIGHT -> EnumSet.of(ARMED, RECOVERING, STOPPED, FAULTED);
      case ARMED -> EnumSet.of(TRIGGERED, RECOVERING, COMPLETE, STOPPED, FAULTED);
      case TRIGGERED -> EnumSet.of(READING, STOPPED, FAULTED);
      case READING -> EnumSet.of(ANALYSED, FAULTED);
      case ANALYSED -> EnumSet.of(LOGGED, FAULTED);
      case LOGGED -> EnumSet.of(RECOVERING, COMPLETE, STOPPED, FAULTED);
      case RECOVERING -> EnumSet.of(ARMED, STOPPED, FAULTED);
      case COMPLETE, STOPPED, FAULTED -> EnumSet.noneOf(LoopState.class);
    };
  }

  /** One line: what is true on the bench now. */
  public String truth() {
    return truth;
  }

  /** Whether the bench may go from this state to {@code state}. */
  public boolean mayLeadTo(LoopState state) {
    return next().contains(state);
  }

  /** Whether the series is over. */
  public boolean isEnd() {
    return next().isEmpty();
  }
}
