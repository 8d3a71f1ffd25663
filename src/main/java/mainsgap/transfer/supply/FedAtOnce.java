package mainsgap.transfer.supply;

/**
 * Tells a load that another supply feeds from the moment at which the supply before is left: mains
 * whose voltage or phase has stepped, or an output that takes over. For half a cycle and more its
 * voltage is that supply's, of about nominal height, at another angle; what a motor or a capacitor
 * leaves on a load decays within that time.
 */
public final class FedAtOnce {
  /** A shorter stretch of a decay is no other than that of a sine. */
  private static final double SHORTEST_CYCLES = 0.5;

  /** Where the supply before is left is not known better where another one takes over. */
  private static final double LATER_CYCLES = 0.25;

  /** Lower than this is a sag, or a motor that runs on; higher is a surge. */
  private static final double LEAST_SHARE_OF_PEAK = 0.8;

  private static final double MOST_SHARE_OF_PEAK = 1.3;

  private static final double EXPLAINED_SHARE_OF_PEAK = 0.012;
  private static final double EXPLAINED_NOISES = 1.5;

  /** Another supply's frequency may differ by so much. */
  private static final double[] OTHER_FREQUENCY_SHARES = {0.99, 0.995, 1.005, 1.01};

  /** Of what a cycle at another frequency leaves, and changes of its height, less than this. */
  private static final double OTHER_FREQUENCY_SHARE_OF_PEAK = 0.03;

  private final Recording recording;
  private final double spreadVolts;
  private final MovedSupply moved;

  public FedAtOnce(Recording recording, Supply before) {
    this.recording = recording;
    this.spreadVolts = before.usualSpreadVolts();
    this.moved = new MovedSupply(recording, before);
  }

  /**
   * Whether another supply feeds from a sample on, or from soon after it, for a cycle or up to
   * another sample.
   */
  public boolean isFed(int from, int to) {
    int later = from + (int) (LATER_CYCLES * recording.samplesPerCycle());
    boolean isLong = to - later >= recording.samplesPerCycle();
    return isFedFrom(from, to) || (isLong && isFedFrom(later, to));
  }

  private boolean isFedFrom(int from, int to) {
    int end = Math.min(to, from + (int) Math.ceil(recording.samplesPerCycle()));
    if (end - from < SHORTEST_CYCLES * recording.samplesPerCycle()) {
      return false;
    }
    double most =
        Math.max(EXPLAINED_SHARE_OF_PEAK * recording.peakVolts(), EXPLAINED_NOISES * spreadVolts);
    MovedSupply.Move same = moved.to(from, end, 1);
    if (explains(same, most, 0)) {
      return true;
    }
    if (!explains(same, most, OTHER_FREQUENCY_SHARE_OF_PEAK)) {
      return false;
    }
    for (double share : OTHER_FREQUENCY_SHARES) {
      if (explains(moved.to(from, end, share), most, 0)) {
        return true;
      }
    }
    return false;
  }

  /**
   * Whether a supply so moved feeds the load.
   *
   * @param mostVolts that it leaves of the samples
   * @param slackShareOfPeak by which it may miss that, and the heights of a supply
   */
  private boolean explains(MovedSupply.Move move, double mostVolts, double slackShareOfPeak) {
    double height = move.amplitudeVolts() / recording.peakVolts();
    return height >= LEAST_SHARE_OF_PEAK - slackShareOfPeak
        && height <= MOST_SHARE_OF_PEAK + slackShareOfPeak
        && move.misfitVolts() < mostVolts + slackShareOfPeak * recording.peakVolts();
  }
}
