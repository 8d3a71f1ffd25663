package mainsgap.bench;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * Where a series is logged.
 *
 * @param file the session file; null for a new one in {@code folder}
 * @param goOn whether an existing session goes on, rather than being refused
 * @param folder where a new session is made; null for the user's data folder
 */
public record SessionPlace(@Nullable Path file, boolean goOn, @Nullable Path folder) {
  /** A new file in the user's data folder. */
  public static final SessionPlace NEW_IN_DATA_FOLDER = new SessionPlace(null, false);

  /** A file by its name. */
  public SessionPlace(@Nullable Path file, boolean goOn) {
    this(file, goOn, null);
  }

  /** A new file in {@code folder}. */
  public static SessionPlace newIn(Path folder) {
    return new SessionPlace(null, false, folder);
  }

  /** An existing session, to go on with. */
  public static SessionPlace goingOn(Path file) {
    return new SessionPlace(file, true);
  }
}
