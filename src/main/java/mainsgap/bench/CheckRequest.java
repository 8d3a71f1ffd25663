package mainsgap.bench;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * What an instrument is checked for.
 *
 * @param resource its resource name
 * @param probe whether it is looked for the profile that fits
 * @param profile the profile to try; null for none
 * @param rig what is connected, for the try; null where nobody said
 * @param record the file into which the conversation is written; null for none
 */
public record CheckRequest(
    String resource,
    boolean probe,
    @Nullable String profile,
    @Nullable Path rig,
    @Nullable Path record) {}
