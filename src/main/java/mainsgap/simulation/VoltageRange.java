package mainsgap.simulation;

/**
 * The range of a channel, in the volts that the instrument shows.
 *
 * @param middleVolts the voltage of the middle code
 * @param spanVolts from the lowest code to one beyond the highest
 * @param shownPerTip the volts shown for each volt at the probe tip: other than 1 where the factor
 *     that was told is not that of the probe
 */
record VoltageRange(double middleVolts, double spanVolts, double shownPerTip) {

  /** A range in volts at the tip. */
  static VoltageRange atTip(double middleVolts, double spanVolts) {
    return new VoltageRange(middleVolts, spanVolts, 1);
  }

  /** A range in volts at the tip of a bench whose {@code channel} was told {@code probeFactor}. */
  static VoltageRange told(int channel, double probeFactor, double middleVolts, double spanVolts) {
    return new VoltageRange(
        middleVolts, spanVolts, probeFactor / SimulatedBench.probeFactor(channel));
  }

  double lowestVolts() {
    return middleVolts - spanVolts / 2;
  }
}
