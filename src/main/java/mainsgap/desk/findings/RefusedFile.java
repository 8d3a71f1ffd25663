package mainsgap.desk.findings;

import java.nio.file.Path;

/**
 * A file that was asked for and could not be shown.
 *
 * @param file as it was asked for
 * @param why in a sentence, with what to do
 */
record RefusedFile(Path file, String why) {}
