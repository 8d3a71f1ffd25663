package mainsgap.desk.trials;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * Where a series is kept.
 *
 * @param file the session file
 * @param lastSeal the seal that stands for all of it; null while the series runs
 */
record Evidence(Path file, @Nullable String lastSeal) {}
