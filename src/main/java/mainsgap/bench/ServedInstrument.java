package mainsgap.bench;

/**
 * A resource name of the simulated bench.
 *
 * @param profile the instrument profile that is answered there
 * @param link the kind of link, in words
 * @param resource what to open
 */
public record ServedInstrument(String profile, String link, String resource) {}
