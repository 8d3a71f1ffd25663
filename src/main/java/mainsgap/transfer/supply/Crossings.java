package mainsgap.transfer.supply;

/** Counts changes of sign, from well above zero to well below it and back. */
public final class Crossings {
  private static final double CROSSED_SHARE_OF_PEAK = 0.3;

  private static final int FEWEST_CHANGES = 3;

  private Crossings() {}

  /** From the first to the last change of sign, not a number where there are too few. */
  public static double hertz(Recording recording, int from, int to) {
    double level = CROSSED_SHARE_OF_PEAK * recording.peakVolts();
    int first = -1;
    int last = -1;
    int changes = 0;
    double side = 0;
    for (int i = from; i < to; i++) {
      double volts = recording.volts()[i];
      if (Math.abs(volts) > level && Math.signum(volts) != side) {
        if (side != 0) {
          last = i;
          first = first < 0 ? i : first;
          changes++;
        }
        side = Math.signum(volts);
      }
    }
    return changes < FEWEST_CHANGES
        ? Double.NaN
        : (changes - 1) / 2.0 * recording.time().sampleRateHertz() / (last - first);
  }
}
