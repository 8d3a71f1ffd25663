package mainsgap.transfer.supply;

/**
 * Tells a load that nothing feeds, for about a millisecond, from one whose supply a pulse is added
 * to: it lies low or stands still while its supply would move, where a pulse moves with the supply.
 */
public final class DeadLoad {
  /** Low is less than this share of what the supply would be. */
  private static final double LOW_SHARE = 0.5;

  /** Or this near to zero; what is as near to the supply does not tell. */
  private static final double APART_SHARE_OF_PEAK = 0.05;

  private static final double APART_NOISES = 4;

  /** The rest are the sides of a pulse. */
  private static final double MOST_SAMPLES = 0.6;

  /** One of the two moves by less than half of the other: the ratio of their squares. */
  private static final double STILL_RATIO = 0.25;

  /** What moves by less than this share of nominal peak does not tell. */
  private static final double MOVING_SHARE_OF_PEAK = 0.01;

  private static final double MOVING_NOISES = 2;

  private final Recording recording;
  private final Supply supply;

  public DeadLoad(Recording recording, Supply supply) {
    this.recording = recording;
    this.supply = supply;
  }

  /**
   * Whether the samples that lie away from the supply from one to another are those of one, or none
   * lies far enough away to tell.
   */
  public boolean isIn(int from, int to) {
    double noise = supply.usualSpreadVolts();
    double apart = Math.max(APART_SHARE_OF_PEAK * recording.peakVolts(), APART_NOISES * noise);
    double offset = supply.harmonics().offsetVolts();
    RunningSpread load = new RunningSpread();
    RunningSpread added = new RunningSpread();
    double[] supplied = supply.voltsIn(recording.time(), from, to);
    int low = 0;
    for (int i = from; i < to; i++) {
      double expected = supplied[i - from] - offset;
      double volts = recording.volts()[i] - offset;
      if (Math.abs(volts - expected) > apart) {
        load.add(volts);
        added.add(volts - expected);
        low += isLow(volts, expected, apart) ? 1 : 0;
      }
    }
    double moving = Math.max(MOVING_SHARE_OF_PEAK * recording.peakVolts(), MOVING_NOISES * noise);
    boolean loadMoves = load.variance() > moving * moving;
    boolean addedMoves = added.variance() > moving * moving;
    if (addedMoves && load.variance() < STILL_RATIO * added.variance()) {
      return true;
    }
    boolean isPulse = loadMoves && added.variance() < STILL_RATIO * load.variance();
    return load.count() == 0 || (!isPulse && low > MOST_SAMPLES * load.count());
  }

  /** Near zero, or what is left of the supply: never on its other side. */
  private static boolean isLow(double volts, double expected, double apart) {
    boolean isLeft = volts * expected > 0 && Math.abs(volts) < LOW_SHARE * Math.abs(expected);
    return Math.abs(volts) < apart || isLeft;
  }

  /** The variance of values that come one by one. */
  private static final class RunningSpread {
    private int count;
    private double sum;
    private double squares;

    void add(double value) {
      count++;
      sum += value;
      squares += value * value;
    }

    int count() {
      return count;
    }

    double variance() {
      double mean = sum / Math.max(1, count);
      return Math.max(0, squares / Math.max(1, count) - mean * mean);
    }
  }
}
