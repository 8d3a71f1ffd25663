package mainsgap.arming;

import mainsgap.signal.Event;

/**
 * What the hand on the switch is asked for.
 *
 * @param move the move of the mains switch
 * @param sentence the words for people
 * @param asksForWord whether a person's word is asked for, on which the program moves the switch
 */
public record Prompt(SwitchMove move, String sentence, boolean asksForWord) {

  /** Asks a hand. */
  Prompt(SwitchMove move, String sentence) {
    this(move, sentence, false);
  }

  /** Asks for the move that causes {@code event}; the instrument is armed. */
  static Prompt forEvent(Event event) {
    return switch (event) {
      case LOSS -> new Prompt(SwitchMove.OPEN, "open the mains switch now");
      case RESTORATION ->
          new Prompt(
              SwitchMove.CLOSE,
              "close the mains switch now; the unit may take up to 5 minutes to go back to mains");
    };
  }

  /** Asks for the move back; nothing is armed. */
  static Prompt afterEvent(Event event) {
    return switch (event) {
      case LOSS -> toClose();
      case RESTORATION ->
          new Prompt(
              SwitchMove.OPEN, "open the mains switch again: the unit goes on from its battery");
    };
  }

  /** Asks for mains, whatever is to be measured. */
  static Prompt toClose() {
    return new Prompt(SwitchMove.CLOSE, "close the mains switch again");
  }

  /** Asks a person for the word on which the program closes the switch. */
  static Prompt forWord() {
    return new Prompt(
        SwitchMove.CLOSE,
        "say that the program may close the mains switch (Enter): nobody touches the rig, and mains"
            + " comes on at once",
        true);
  }
}
