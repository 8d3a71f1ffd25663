package mainsgap.transfer.edge;

/**
 * An instant at which the voltage may have changed, and how well that explains the samples.
 *
 * @param sample the first sample of the later model
 * @param width the samples that it stands for
 * @param cost the squared deviations of all samples, in units of their spread
 */
record EdgeCandidate(
    int sample, double width, EdgeShape shape, EdgeShape.Setting setting, double cost) {}
