package mainsgap.desk.rig;

import mainsgap.bench.CatchWish;

/** The ways into the record, for people. */
final class CatchWords {
  private CatchWords() {}

  static String name(CatchWish wish) {
    return switch (wish) {
      case AUTOMATIC -> "the surest that scope and rig allow";
      case TIME_OUT_TRIGGER -> "time-out trigger";
      case DROPOUT_TRIGGER -> "dropout trigger";
      case PULSE_WIDTH_TRIGGER -> "pulse-width trigger";
      case INTERVAL_TRIGGER -> "interval trigger";
      case WINDOW_TRIGGER -> "window trigger";
      case EDGE_TRIGGER -> "edge of a signal channel";
      case EXTERNAL_TRIGGER -> "edge at the external input";
      case FORCED_RECORD -> "one long record";
      case BACK_TO_BACK_RECORDS -> "short records, one after the other";
    };
  }

  /** What it does, and what it can miss. */
  static String of(CatchWish wish) {
    return switch (wish) {
      case AUTOMATIC -> "The program takes what misses least, and says what that is.";
      case TIME_OUT_TRIGGER ->
          "Fires once no crossing of a level has come for longer than a healthy wave is quiet. Blind"
              + " to gaps that end sooner; where on the wave they begin decides.";
      case DROPOUT_TRIGGER ->
          "Fires once no rise through a level has come for more than a cycle. Blind to most gaps"
              + " under a cycle.";
      case PULSE_WIDTH_TRIGGER ->
          "Fires once the signal has stayed below a level for too long. Blind to gaps that end"
              + " sooner.";
      case INTERVAL_TRIGGER ->
          "Fires once two rises are too far apart. Blind to most gaps under a cycle.";
      case WINDOW_TRIGGER ->
          "Fires once the signal has stayed near zero for longer than a healthy wave does. The"
              + " shortest blind zone of the triggers; a residue on the load can hide the gap.";
      case EDGE_TRIGGER ->
          "Fires on an isolated signal of mains or of the unit's own contact, on a channel that the"
              + " rig file describes. No blind zone of its own; the signal may be late.";
      case EXTERNAL_TRIGGER ->
          "Fires on such a signal at the external input. No blind zone of its own; the signal may be"
              + " late.";
      case FORCED_RECORD ->
          "One record of seconds, inside which the switch is opened; the gap is found in it. No"
              + " blind zone.";
      case BACK_TO_BACK_RECORDS ->
          "For scopes that can do nothing else. Blind between two records, and the program says how"
              + " much of the time that is.";
    };
  }
}
