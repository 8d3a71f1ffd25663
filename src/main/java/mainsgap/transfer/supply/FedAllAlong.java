package mainsgap.transfer.supply;

/**
 * Holds it against the samples that a load was fed all along by a supply and the one that took over
 * from it: about the change each average lies at one of the two, and from there on each cycle is as
 * the one before.
 */
public final class FedAllAlong {
  /** Noise that is more is none: it is the shape of the cycle. */
  private static final double MOST_NOISE_SHARE_OF_PEAK = 0.05;

  private static final double VAGUE_SPREADS = 3;

  private final Recording recording;
  private final Supply before;
  private final Supply after;
  private final int cycle;

  public FedAllAlong(Recording recording, Supply before, Supply after) {
    this.recording = recording;
    this.before = before;
    this.after = after;
    this.cycle = (int) Math.ceil(recording.samplesPerCycle());
  }

  /**
   * The first sample that neither explains; -1 where there is none up to the end of the record.
   *
   * @param seconds when the one went over to the other
   */
  public int leftFrom(double seconds) {
    int changed = (int) Math.max(0, recording.time().indexAt(seconds));
    int settled = Math.min(recording.length(), Math.max(changed, after.from()) + cycle);
    int left = leftByBoth(Math.max(0, changed - cycle), settled);
    if (left >= 0 || recording.length() - settled < SampleNoise.cycles(recording)) {
      return left;
    }
    double period = recording.time().sampleRateHertz() / after.harmonics().frequencyHertz();
    return Departure.find(recording, settled, recording.length(), period, seenVolts(after));
  }

  /** Only the average in which the one goes over to the other lies between them. */
  private int leftByBoth(int from, int to) {
    int width = Departure.averagingSamples(recording);
    boolean wasBetween = false;
    for (int i = from; i + width <= to; i += width) {
      double fromBefore = awayVolts(before, i, width);
      double fromAfter = awayVolts(after, i, width);
      boolean isAway = fromBefore != 0 && fromAfter != 0;
      boolean isBetween = isAway && fromBefore * fromAfter < 0;
      if (isAway && (!isBetween || wasBetween)) {
        return i;
      }
      wasBetween = isBetween;
    }
    return -1;
  }

  /** How far an average lies from a supply; 0 where no more than it may. */
  private double awayVolts(Supply supply, int from, int width) {
    double mean = 0;
    for (double deviation : supply.deviationsIn(recording, from, from + width)) {
      mean += deviation / width;
    }
    double middle = recording.time().secondsAt(from + (width - 1) / 2.0);
    double vague = VAGUE_SPREADS * supply.model().spreadVoltsAt(middle);
    return Math.abs(mean) > Math.max(vague, seenVolts(supply)) ? mean : 0;
  }

  private double seenVolts(Supply supply) {
    double most = MOST_NOISE_SHARE_OF_PEAK * recording.peakVolts();
    return Departure.thresholdVolts(recording, Math.min(most, supply.usualSpreadVolts()));
  }
}
