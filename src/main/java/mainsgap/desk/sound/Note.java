package mainsgap.desk.sound;

/**
 * A part of a sound.
 *
 * @param frequencyHertz of its fundamental; 0 for a rest
 * @param millis how long it lasts
 */
public record Note(double frequencyHertz, int millis) {

  static Note rest(int millis) {
    return new Note(0, millis);
  }
}
