package mainsgap.transfer;

import mainsgap.signal.TimeAxis;

/**
 * The samples about one instant, with the two models between which the voltage changes there. All
 * arrays have one value a sample and are owned.
 *
 * @param volts what was recorded
 * @param earlierVolts the model up to the instant
 * @param laterVolts the model from the instant on, once any transient is over
 * @param earlierSpreadVolts the standard deviation about the earlier model, above 0
 * @param laterSpreadVolts the standard deviation about the later model, above 0
 * @param time the axis of these samples
 * @param informationShare how much a sample tells beside its neighbours: 1 where noise is white,
 *     less where neighbouring deviations are correlated
 */
@SuppressWarnings("ArrayRecordComponent") // owned, made for one call
record EdgeWindow(
    double[] volts,
    double[] earlierVolts,
    double[] laterVolts,
    double[] earlierSpreadVolts,
    double[] laterSpreadVolts,
    TimeAxis time,
    double informationShare) {

  int length() {
    return volts.length;
  }

  /** Squared deviation from the earlier model in units of its spread, and the spread's own cost. */
  double earlierCost(int i) {
    double z = (volts[i] - earlierVolts[i]) / earlierSpreadVolts[i];
    return z * z + 2 * Math.log(earlierSpreadVolts[i]);
  }

  /** Squared deviation from the later model in units of its spread, and the spread's own cost. */
  double laterCost(int i) {
    double z = laterDeviation(i);
    return z * z + 2 * Math.log(laterSpreadVolts[i]);
  }

  double laterDeviation(int i) {
    return (volts[i] - laterVolts[i]) / laterSpreadVolts[i];
  }
}
