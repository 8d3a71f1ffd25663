package mainsgap.simulation;

/**
 * One way in which an instrument of the simulated bench can be reached.
 *
 * @param instrument what answers there
 * @param link the kind of link, in words for people
 * @param resource the resource name to open
 */
public record Served(SimulatedInstrument instrument, String link, String resource) {}
