package mainsgap.desk.sound;

/** Where sounds go. */
@FunctionalInterface
public interface SoundOutput {

  /**
   * Plays the samples of {@link Tones#pcm} and returns when they are over.
   *
   * @throws SilentException if nothing can be heard here
   */
  void play(byte[] pcm);
}
