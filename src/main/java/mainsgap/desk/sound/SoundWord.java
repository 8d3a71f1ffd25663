package mainsgap.desk.sound;

import java.util.List;

/**
 * What is said by a sound, to somebody whose eyes are on the switch. Each differs from the others
 * in the way its pitch goes and in its rhythm, not in pitch alone.
 */
public enum SoundWord {
  /** The instrument watches: move the switch. Two rising notes. */
  ARMED(new Note(660, 90), Note.rest(40), new Note(990, 160)),
  /** The event is caught: hands off. One short high note. */
  CAUGHT(new Note(1320, 70)),
  /** Mains is wanted back. Two equal slow notes, then a higher one. */
  CLOSE_THE_SWITCH(
      new Note(520, 150), Note.rest(90), new Note(520, 150), Note.rest(90), new Note(780, 240)),
  /** Passed. A rising chord of three. */
  PASSED(new Note(523, 110), new Note(659, 110), new Note(784, 260)),
  /** Failed. Two falling notes. */
  FAILED(new Note(440, 200), Note.rest(30), new Note(262, 420)),
  /** The series stands, and somebody has to look. Four low quick notes. */
  FAULT(
      new Note(220, 120),
      Note.rest(80),
      new Note(220, 120),
      Note.rest(80),
      new Note(220, 120),
      Note.rest(80),
      new Note(220, 300));

  @SuppressWarnings("ImmutableEnumChecker") // List.of gives one that never changes
  private final List<Note> notes;

  SoundWord(Note... notes) {
    this.notes = List.of(notes);
  }

  /** Its notes, in their order. */
  public List<Note> notes() {
    return notes;
  }
}
