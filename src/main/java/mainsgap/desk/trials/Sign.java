package mainsgap.desk.trials;

/**
 * What is said in the largest type.
 *
 * @param kind what the bench is at
 * @param toDo the one thing to do now, or what to expect; a sentence
 */
record Sign(Kind kind, String toDo) {

  /** How urgent it looks; never told by colour alone. */
  enum Tone {
    CALM,
    ACTIVE,
    ASKING,
    GOOD,
    BAD,
    DOUBTFUL
  }

  /** What the bench is at, in a word or two. */
  enum Kind {
    NOT_READY("Not ready", Tone.CALM),
    READY("Ready", Tone.CALM),
    CONNECTING("Connecting", Tone.ACTIVE),
    CHECKING("Checking", Tone.ACTIVE),
    ARMED("Armed", Tone.ASKING),
    CAUGHT("Caught", Tone.ACTIVE),
    READING("Reading", Tone.ACTIVE),
    LOGGING("Logging", Tone.ACTIVE),
    PASSED("Passed", Tone.GOOD),
    FAILED("Failed", Tone.BAD),
    INCONCLUSIVE("Inconclusive", Tone.DOUBTFUL),
    MEASURED("Measured", Tone.ACTIVE),
    REFUSED("Refused", Tone.DOUBTFUL),
    NO_TRIGGER("No trigger", Tone.DOUBTFUL),
    OPEN_SWITCH("Open the switch", Tone.ASKING),
    CLOSE_SWITCH("Close the switch", Tone.ASKING),
    WORD_ASKED("Let mains close?", Tone.ASKING),
    SETTLING("Settling", Tone.ACTIVE),
    STOPPING("Stopping", Tone.DOUBTFUL),
    SERIES_PASSED("Series passed", Tone.GOOD),
    SERIES_FAILED("Series failed", Tone.BAD),
    NOT_YET_SHOWN("Not yet shown", Tone.DOUBTFUL),
    COMPLETE("Complete", Tone.GOOD),
    INCOMPLETE("Not complete", Tone.DOUBTFUL),
    STOPPED("Stopped", Tone.DOUBTFUL),
    FAULT("Fault", Tone.BAD);

    private final String words;
    private final Tone tone;

    Kind(String words, Tone tone) {
      this.words = words;
      this.tone = tone;
    }

    String words() {
      return words;
    }

    /** Whether it tells of a series that is complete. */
    boolean isOfWholeSeries() {
      return switch (this) {
        case SERIES_PASSED, SERIES_FAILED, NOT_YET_SHOWN, COMPLETE -> true;
        default -> false;
      };
    }

    Tone tone() {
      return tone;
    }
  }
}
