package mainsgap.desk.rig;

import java.util.List;

/**
 * What is shown in place at a part of the rig.
 *
 * @param level how it stands
 * @param words what is set, a line each
 * @param danger what its probe has to stand
 * @param live what is seen there; empty where nothing was looked at
 */
record PartState(Level level, List<String> words, Danger danger, String live) {

  /**
   * What a probe has to stand.
   *
   * @param words empty where no probe touches what is live
   * @param stands whether it does
   */
  record Danger(String words, boolean stands) {
    static final Danger NONE = new Danger("", true);
  }

  /** How a part stands. */
  enum Level {
    /** Not there, and not needed. */
    ABSENT,
    /** Something has to be set or mended. */
    WRONG,
    /** Set as far as can be told. */
    SET,
    /** The last check found it right. */
    RIGHT
  }

  static final PartState NOTHING = new PartState(Level.ABSENT, List.of(), Danger.NONE, "");

  /** Takes its own copy. */
  PartState {
    words = List.copyOf(words);
  }
}
