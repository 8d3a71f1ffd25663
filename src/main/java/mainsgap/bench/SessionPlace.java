package mainsgap.bench;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * Where a series is logged.
 *
 * @param file the session file; null for a new one in the user's data folder
 * @param goOn whether an existing session goes on, rather than being refused
 */
public record SessionPlace(@Nullable Path file, boolean goOn) {
  /** A new file in the user's data folder. */
  public static final SessionPlace NEW_IN_DATA_FOLDER = new SessionPlace(null, false);
}
