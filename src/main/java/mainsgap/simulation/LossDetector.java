package mainsgap.simulation;

/**
 * How a unit notices that its mains is gone: the mains has strayed from the sine that it should
 * follow by more than a threshold for a time without a break. Near a zero crossing a loss shows
 * late, so the delay depends on the point on wave.
 *
 * @param thresholdVolts how far it may stray
 * @param holdSeconds for how long it must stray
 */
record LossDetector(double thresholdVolts, double holdSeconds) {
  private static final double STEP_SECONDS = 20e-6;
  private static final double LONGEST_SECONDS = 0.2;

  /** When the loss is noticed, for a movement of the mains switch at 0 s. */
  double noticesAt(Voltage expected, Voltage seen) {
    double straySince = 0;
    for (double at = 0; at < LONGEST_SECONDS; at += STEP_SECONDS) {
      if (Math.abs(expected.voltsAt(at) - seen.voltsAt(at)) <= thresholdVolts) {
        straySince = at;
      } else if (at - straySince >= holdSeconds) {
        return at;
      }
    }
    return LONGEST_SECONDS;
  }
}
