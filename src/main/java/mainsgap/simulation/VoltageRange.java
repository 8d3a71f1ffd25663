package mainsgap.simulation;

/**
 * The range of a channel in volts at the probe tip.
 *
 * @param middleVolts the voltage of the middle code
 * @param spanVolts from the lowest code to one beyond the highest
 */
record VoltageRange(double middleVolts, double spanVolts) {

  double lowestVolts() {
    return middleVolts - spanVolts / 2;
  }
}
