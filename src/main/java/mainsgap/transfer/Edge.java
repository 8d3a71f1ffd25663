package mainsgap.transfer;

import mainsgap.signal.TimeAxis;

/**
 * A located instant.
 *
 * @param seconds on the capture's own time axis
 * @param samplingSeconds standard uncertainty from the sample interval
 * @param locationSeconds standard uncertainty from noise, slope and the choice of shape
 * @param modelSeconds standard uncertainty from the models' own error: how long they stay alike
 * @param shape how the voltage changes there
 * @param window the times of {@code laterVolts}
 * @param laterVolts the model from the instant on, with what the shape adds; owned
 */
@SuppressWarnings("ArrayRecordComponent") // made for one measurement
record Edge(
    double seconds,
    double samplingSeconds,
    double locationSeconds,
    double modelSeconds,
    EdgeShape shape,
    TimeAxis window,
    double[] laterVolts) {

  static final Edge NONE =
      new Edge(Double.NaN, 0, 0, 0, EdgeShape.ABRUPT, new TimeAxis(0, 1, 1, 0), new double[1]);

  /** The combined standard uncertainty. */
  double standardSeconds() {
    return Math.hypot(Math.hypot(samplingSeconds, locationSeconds), modelSeconds);
  }

  /** Whether the window that was searched holds this time. */
  boolean covers(double atSeconds) {
    double index = window.indexAt(atSeconds);
    return index >= -0.5 && index < window.length() - 0.5;
  }

  /** The model from the instant on, at a time that the window covers. */
  double laterVoltsAt(double atSeconds) {
    return laterVolts[(int) Math.round(window.indexAt(atSeconds))];
  }
}
