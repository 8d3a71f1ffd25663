package mainsgap.bench;

import mainsgap.scope.CatchMethod;
import org.jspecify.annotations.Nullable;

/** How the event is to get into the record. */
public enum CatchWish {
  /** The surest way that the instrument and the rig allow. */
  AUTOMATIC(null),
  /** Fires once no crossing of a level has come for a time. */
  TIME_OUT_TRIGGER(CatchMethod.TIME_OUT_TRIGGER),
  /** Fires once no rise through a level has come for a time. */
  DROPOUT_TRIGGER(CatchMethod.DROPOUT_TRIGGER),
  /** Fires once the signal has stayed below a level for a time. */
  PULSE_WIDTH_TRIGGER(CatchMethod.PULSE_WIDTH_TRIGGER),
  /** Fires once the time between two rises is too long. */
  INTERVAL_TRIGGER(CatchMethod.INTERVAL_TRIGGER),
  /** Fires once the signal has stayed near zero for a time. */
  WINDOW_TRIGGER(CatchMethod.WINDOW_TRIGGER),
  /** Fires on an edge of the marker channel, or of mains that comes back. */
  EDGE_TRIGGER(CatchMethod.EDGE_TRIGGER),
  /** Fires on an edge at the external trigger input. */
  EXTERNAL_TRIGGER(CatchMethod.EXTERNAL_TRIGGER),
  /** One record of seconds in which the event is found in software. */
  FORCED_RECORD(CatchMethod.FORCED_RECORD),
  /** Short records, one after the other. */
  BACK_TO_BACK_RECORDS(CatchMethod.BACK_TO_BACK_RECORDS);

  private final @Nullable CatchMethod method;

  CatchWish(@Nullable CatchMethod method) {
    this.method = method;
  }

  /** The method; null leaves the choice to the planner. */
  @Nullable CatchMethod method() {
    return method;
  }
}
