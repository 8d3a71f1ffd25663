package mainsgap.desk.findings;

import java.nio.file.Path;

/**
 * A trial among those of all sessions.
 *
 * @param file its session
 * @param number in its session
 */
record TrialKey(Path file, int number) {}
