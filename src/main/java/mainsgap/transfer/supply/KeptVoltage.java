package mainsgap.transfer.supply;

/**
 * Tells a load that was left and keeps a voltage near that of its supply, as one that discharges
 * while its supply falls as fast, or a motor that runs on: it is away from the supply by little,
 * but beyond the noise of averages, and another supply then comes with a step. One supply that goes
 * over into another makes none.
 */
public final class KeptVoltage {
  /** The load is this far from the supply somewhere; a fit that goes on for a while is nearer. */
  private static final double AWAY_SHARE_OF_PEAK = 0.015;

  /** No average of noise alone is as far. */
  private static final double AWAY_NOISES = 6;

  /** And so far for a good part of the time: it may cross the supply, and begins at it. */
  private static final double LEFT_SHARE_OF_PEAK = 0.007;

  /** Few averages of noise alone are as far. */
  private static final double LEFT_NOISES = 3.5;

  private static final double LEFT_SHARE = 0.35;

  /** The other supply comes so far from there. */
  private static final double STEP_SHARE_OF_PEAK = 0.08;

  /** A supply that feeds, but is not settled yet, is this near to its model. */
  public static final double FED_SHARE_OF_PEAK = 0.03;

  /** Shorter gaps are not told from notches. */
  private static final double SHORTEST_SECONDS = 0.4e-3;

  /** No load stays so near to its supply for longer. */
  public static final double LONGEST_SECONDS = 3e-3;

  /** A load that crosses the supply right before the step follows it for so long. */
  private static final double CROSSING_SECONDS = 0.5e-3;

  /** The noise of an average that hides nothing of what is looked for. */
  private static final double QUIET_SHARE_OF_PEAK = 0.0025;

  /** Fewer tell no shape. */
  private static final int FEWEST_AVERAGES = 4;

  private final Recording recording;
  private final Supply supply;

  /** Of a load that was fed by a supply. */
  public KeptVoltage(Recording recording, Supply supply) {
    this.recording = recording;
    this.supply = supply;
  }

  /**
   * From where on it may have been left; whether it was, {@link #isIn} tells of what is found then.
   *
   * @param step the first sample that another supply feeds
   * @return -1 where it does not
   */
  public int since(int step) {
    int width = Departure.averagingSamples(recording);
    int last = step - width;
    int earliest = Math.max(width, step - recording.samplesIn(LONGEST_SECONDS));
    SmoothedDeviation deviation = new SmoothedDeviation(recording, supply, last);
    double away = volts(AWAY_SHARE_OF_PEAK, AWAY_NOISES, width);
    double left = volts(LEFT_SHARE_OF_PEAK, LEFT_NOISES, width);
    int crossing = recording.samplesIn(CROSSING_SECONDS);
    double most = 0;
    int since = last;
    for (int i = last; i > earliest && since - i <= (most > away ? width : crossing); i--) {
      double volts = Math.abs(deviation.at(i));
      most = Math.max(most, volts);
      since = volts > left ? i : since;
    }
    int shortest = Math.max(recording.samplesIn(SHORTEST_SECONDS), FEWEST_AVERAGES * width);
    return most > away && step - since >= shortest ? since : -1;
  }

  /**
   * Whether the load is away from both supplies for a good part of a short gap, and the next one
   * then comes with a step.
   *
   * @param from the first sample behind the loss
   * @param end one after the last before the return
   */
  public boolean isIn(int from, int end, Supply next) {
    int width = averagingSamples(end - from);
    if (end - from > recording.samplesIn(LONGEST_SECONDS) || end + width > recording.length()) {
      return false;
    }
    double away = volts(AWAY_SHARE_OF_PEAK, AWAY_NOISES, width);
    double left = volts(LEFT_SHARE_OF_PEAK, LEFT_NOISES, width);
    double[] fromSupply = supply.deviationsIn(recording, from, end);
    double[] fromNext = next.deviationsIn(recording, from, end + width);
    double most = 0;
    double toNext = 0;
    int leftCount = 0;
    int count = 0;
    for (int k = 0; k + width <= fromSupply.length; k += width, count++) {
      double volts = Math.abs(mean(fromSupply, k, width));
      toNext = Math.abs(mean(fromNext, k, width));
      leftCount += Math.min(volts, toNext) > left ? 1 : 0;
      most = Math.max(most, volts);
    }
    return most > away
        && count >= FEWEST_AVERAGES
        && leftCount > LEFT_SHARE * count
        && toNext > STEP_SHARE_OF_PEAK * recording.peakVolts()
        && Math.abs(mean(fromNext, end - from, width)) < FED_SHARE_OF_PEAK * recording.peakVolts();
  }

  private double volts(double shareOfPeak, double noises, int averaged) {
    double noise = noises * supply.usualSpreadVolts() / Math.sqrt(averaged);
    return Math.max(shareOfPeak * recording.peakVolts(), noise);
  }

  /** The more, the noisier the samples are, but enough averages of a stretch to tell its shape. */
  private int averagingSamples(int length) {
    double quiet = supply.usualSpreadVolts() / (QUIET_SHARE_OF_PEAK * recording.peakVolts());
    int most = Math.max(1, length / FEWEST_AVERAGES);
    return Math.max(Departure.averagingSamples(recording), (int) Math.min(most, quiet * quiet));
  }

  private static double mean(double[] values, int from, int count) {
    double sum = 0;
    for (int i = from; i < from + count; i++) {
      sum += values[i];
    }
    return sum / count;
  }
}
