package mainsgap.transfer;

/**
 * A located instant.
 *
 * @param seconds on the capture's own time axis
 * @param samplingSeconds standard uncertainty from the sample interval
 * @param locationSeconds standard uncertainty from noise, slope and the choice of model
 * @param shape how the voltage changes there
 */
record Edge(double seconds, double samplingSeconds, double locationSeconds, EdgeShape shape) {}
