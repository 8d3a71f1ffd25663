package mainsgap.desk.sound;

/** There is no sound device, or it is taken. */
public final class SilentException extends RuntimeException {
  private static final long serialVersionUID = 1;

  SilentException(String sentence, Exception cause) {
    super(sentence, cause);
  }
}
