package mainsgap.settings;

/** A settings file cannot be used; the message says file, line, key and what to change. */
public final class SettingsException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /** Creates the exception with its sentence. */
  public SettingsException(String message) {
    super(message);
  }

  /** Creates the exception with its sentence and its cause. */
  public SettingsException(String message, Throwable cause) {
    super(message, cause);
  }
}
