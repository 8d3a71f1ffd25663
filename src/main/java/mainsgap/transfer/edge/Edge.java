package mainsgap.transfer.edge;

import java.util.Map;
import mainsgap.signal.TimeAxis;

/**
 * A located instant.
 *
 * @param seconds on the capture's own time axis
 * @param samplingSeconds standard uncertainty from the sample interval
 * @param locationSeconds standard uncertainty from noise and slope
 * @param choiceSeconds standard uncertainty from the choice between shapes that remain possible
 * @param modelSeconds standard uncertainty from the models' own error: how long they stay alike
 * @param shape how the voltage changes there most likely
 * @param shapes how likely each shape is that remains possible, 0 to 1 and 1 together; owned
 * @param window the times of {@code laterVolts}
 * @param laterVolts the model from the instant on, with what the shape adds; owned
 */
@SuppressWarnings("ArrayRecordComponent") // made for one measurement
public record Edge(
    double seconds,
    double samplingSeconds,
    double locationSeconds,
    double choiceSeconds,
    double modelSeconds,
    EdgeShape shape,
    Map<EdgeShape, Double> shapes,
    TimeAxis window,
    double[] laterVolts) {

  public static final Edge NONE =
      new Edge(Double.NaN, 0, 0, 0, EdgeShape.ABRUPT, new TimeAxis(0, 1, 1, 0), new double[1]);

  /** One of whose shape there is no choice. */
  public Edge(
      double seconds,
      double samplingSeconds,
      double locationSeconds,
      double modelSeconds,
      EdgeShape shape,
      TimeAxis window,
      double[] laterVolts) {
    this(
        seconds,
        samplingSeconds,
        locationSeconds,
        0,
        modelSeconds,
        shape,
        Map.of(shape, 1.0),
        window,
        laterVolts);
  }

  /** The combined standard uncertainty. */
  public double standardSeconds() {
    return Math.hypot(
        Math.hypot(samplingSeconds, locationSeconds), Math.hypot(choiceSeconds, modelSeconds));
  }

  /** Whether the window that was searched holds this time. */
  public boolean covers(double atSeconds) {
    double index = window.indexAt(atSeconds);
    return index >= -0.5 && index < window.length() - 0.5;
  }

  /** The model from the instant on, at a time that the window covers. */
  public double laterVoltsAt(double atSeconds) {
    return laterVolts[(int) Math.round(window.indexAt(atSeconds))];
  }
}
