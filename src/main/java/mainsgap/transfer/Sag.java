package mainsgap.transfer;

/**
 * Tells a load that a sagging supply goes on feeding: over half a cycle and more its voltage is
 * that supply's, only lower. A motor that runs on slips and decays within that time.
 */
final class Sag {
  /** In a shorter stretch a motor's voltage is no other than a lower supply's. */
  private static final double SHORTEST_CYCLES = 0.5;

  /** Below this share of the supply it is an interruption (IEC 61000-4-30, from memory). */
  private static final double LEAST_SHARE = 0.1;

  /** Above this share it is no dip (IEC 61000-4-30, from memory). */
  private static final double MOST_SHARE = 0.9;

  private static final double EXPLAINED_SHARE_OF_PEAK = 0.012;
  private static final double EXPLAINED_NOISES = 1.5;

  private final Recording recording;
  private final Supply supply;

  Sag(Recording recording, Supply supply) {
    this.recording = recording;
    this.supply = supply;
  }

  /** Whether a lower supply feeds from a sample up to another one, or for a cycle. */
  boolean begins(int from, int to) {
    int cycle = from + (int) recording.samplesPerCycle();
    return explains(from, to) || explains(from, Math.min(cycle, recording.length()));
  }

  private boolean explains(int from, int to) {
    if (to - from < SHORTEST_CYCLES * recording.samplesPerCycle()) {
      return false;
    }
    double products = 0;
    double shapes = 0;
    double squares = 0;
    double offset = supply.harmonics().offsetVolts();
    double[] supplied = supply.voltsIn(recording.time(), from, to);
    for (int i = from; i < to; i++) {
      double volts = recording.volts()[i] - offset;
      double shape = supplied[i - from] - offset;
      products += volts * shape;
      shapes += shape * shape;
      squares += volts * volts;
    }
    double share = products / shapes;
    double rms = Math.sqrt(Math.max(0, squares - share * products) / (to - from));
    double noise = EXPLAINED_NOISES * supply.harmonics().noiseVolts();
    return share > LEAST_SHARE
        && share < MOST_SHARE
        && rms < Math.max(EXPLAINED_SHARE_OF_PEAK * recording.peakVolts(), noise);
  }
}
