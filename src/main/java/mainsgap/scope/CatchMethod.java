package mainsgap.scope;

/** How the event gets into a record. */
public enum CatchMethod {
  /** Fires by itself once no crossing of a level, either way, has come for a time. */
  TIME_OUT_TRIGGER("time-out trigger"),
  /** Fires by itself once no rising crossing of a level has come for a time. */
  DROPOUT_TRIGGER("dropout trigger"),
  /** Fires by itself once the signal has stayed below a level for a time. */
  PULSE_WIDTH_TRIGGER("pulse-width trigger"),
  /** Fires by itself once the time since the last rising crossing of a level is too long. */
  INTERVAL_TRIGGER("interval trigger"),
  /** Fires by itself once the signal has stayed between two levels for a time. */
  WINDOW_TRIGGER("window trigger"),
  /** Fires where a channel crosses a level: a mains-present signal, an auxiliary contact. */
  EDGE_TRIGGER("edge trigger"),
  /** Fires on an edge at the external trigger input. */
  EXTERNAL_TRIGGER("external trigger"),
  /** One record of seconds, started at once; the event is found in software. No blind zone. */
  FORCED_RECORD("forced record"),
  /** Short records, one after the other, until the event is in one. Blind between them. */
  BACK_TO_BACK_RECORDS("back-to-back records");

  private final String words;

  CatchMethod(String words) {
    this.words = words;
  }

  /** The method for people. */
  public String words() {
    return words;
  }

  /** Whether the instrument watches the signal and triggers by itself. */
  public boolean isTriggered() {
    return switch (this) {
      case FORCED_RECORD, BACK_TO_BACK_RECORDS -> false;
      case TIME_OUT_TRIGGER,
          DROPOUT_TRIGGER,
          PULSE_WIDTH_TRIGGER,
          INTERVAL_TRIGGER,
          WINDOW_TRIGGER,
          EDGE_TRIGGER,
          EXTERNAL_TRIGGER ->
          true;
    };
  }

  /** Whether it fires because a signal that should alternate has been quiet for too long. */
  public boolean awaitsQuiet() {
    return switch (this) {
      case TIME_OUT_TRIGGER,
          DROPOUT_TRIGGER,
          PULSE_WIDTH_TRIGGER,
          INTERVAL_TRIGGER,
          WINDOW_TRIGGER ->
          true;
      case EDGE_TRIGGER, EXTERNAL_TRIGGER, FORCED_RECORD, BACK_TO_BACK_RECORDS -> false;
    };
  }
}
