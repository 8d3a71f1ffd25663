package mainsgap.transfer.edge;

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
 * @param alike where the models can't be told from each other
 * @param spreadRatio the later model's usual spread as a share of the earlier one's, above 0
 * @param time the axis of these samples
 * @param informationShare how much a sample tells beside its neighbours: 1 where noise is white,
 *     less where neighbouring deviations are correlated
 * @param modelErrorVolts by how much a model may be wrong for all samples alike
 */
@SuppressWarnings("ArrayRecordComponent") // owned, made for one call
public record EdgeWindow(
    double[] volts,
    double[] earlierVolts,
    double[] laterVolts,
    double[] earlierSpreadVolts,
    double[] laterSpreadVolts,
    boolean[] alike,
    double spreadRatio,
    TimeAxis time,
    double informationShare,
    double modelErrorVolts) {

  public int length() {
    return volts.length;
  }

  /** Makes sample {@code i} count for nothing. */
  public void leaveOut(int i, double volts) {
    alike[i] = true;
    earlierSpreadVolts[i] = 10 * volts;
    laterSpreadVolts[i] = 10 * volts;
  }

  /** What a sample costs under the earlier model: its squared deviation in units of the spread. */
  double earlierCost(int i) {
    double z = (volts[i] - earlierVolts[i]) / earlierSpreadVolts[i];
    return z * z;
  }

  /**
   * The same under the later model, and what a model that usually spreads wider, or less, costs
   * more for it, or less. Its usual spread, not that of a step, whose place is uncertain: that must
   * not cost for itself.
   */
  double laterCost(int i) {
    double z = laterDeviation(i);
    return z * z + (alike[i] ? 0 : 2 * Math.log(spreadRatio));
  }

  double laterDeviation(int i) {
    return (volts[i] - laterVolts[i]) / laterSpreadVolts[i];
  }
}
