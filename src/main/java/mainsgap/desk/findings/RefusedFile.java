package mainsgap.desk.findings;

import java.nio.file.Path;
import java.util.Locale;

/**
 * A file that was asked for and could not be shown.
 *
 * @param file as it was asked for
 * @param why in a sentence, with what to do
 */
record RefusedFile(Path file, String why) {
  /** Begins the sentence with a capital. */
  RefusedFile {
    why = why.substring(0, 1).toUpperCase(Locale.ROOT) + why.substring(1);
  }
}
