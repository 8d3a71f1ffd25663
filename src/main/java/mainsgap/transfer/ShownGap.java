package mainsgap.transfer;

/**
 * How far a record shows a gap whose return it does not tell: up to the last sample that the
 * residue still explains, less what could hide in the noise there. A voltage that comes back too
 * near to the record's end to be measured ends it all the same: it is never told later than it is.
 */
final class ShownGap {
  /** The residue may overrun a make by a fourth: what lies before this share of it is dead. */
  private static final double DEAD_SHARE = 0.6;

  /** What an arc leaves at the start says nothing of the residue's own error. */
  private static final double SETTLED_SHARE = 0.2;

  /** Averages of noise stay within so many of their standard deviations. */
  private static final double NOISES = 4;

  /** Hum and quantisation that the noise of the supply before does not tell. */
  private static final double LEAST_BAND_SHARE_OF_PEAK = 0.003;

  /** A residue that misses the samples it was fitted to may miss the next ones by more. */
  private static final double MISFITS = 1.5;

  /** No residue is so wrong that more than this is not seen. */
  private static final double MOST_BAND_SHARE_OF_PEAK = 0.05;

  /** A drift stays below this; a supply that is back goes beyond it, or the record ends. */
  private static final double BACK_SHARE_OF_PEAK = 0.06;

  /** Longer than the crossing of a residue takes, of a supply with a tenth of its amplitude. */
  private static final double MOMENT_SECONDS = 2e-3;

  /**
   * A voltage that rises softly, from any angle, was hidden for no longer than it takes to grow so.
   */
  private static final double GROWN = 16;

  /** Fewer fix no residue. */
  private static final int FEWEST_SAMPLES = 16;

  /** Supplies from whose crossings the hidden time is taken, one a degree. */
  private static final int ANGLES = 360;

  private final Recording recording;
  private final Residue residue;
  private final double[] apart;
  private final int opened;
  private final int explained;
  private final double band;

  /**
   * Looks at a gap.
   *
   * @param noiseVolts the standard deviation of one sample's noise
   * @param openedSeconds the last opening
   */
  ShownGap(Recording recording, Residue residue, double noiseVolts, double openedSeconds) {
    this.recording = recording;
    this.opened = (int) Math.max(0, Math.ceil(recording.time().indexAt(openedSeconds)));
    int most = Math.max(0, recording.length() - opened);
    this.explained = Math.max(0, Math.min(residue.explainedTo() - opened, most));
    this.residue = ofTheDeadPart(residue, noiseVolts);
    this.apart = averages();
    this.band = band(noiseVolts);
  }

  /** A residue is bent towards a return that its stretch overruns: so it is fitted before that. */
  private Residue ofTheDeadPart(Residue found, double noiseVolts) {
    int from = opened + (int) (SETTLED_SHARE * explained);
    int to = opened + (int) (DEAD_SHARE * explained);
    double tight = Math.max(noiseVolts, LEAST_BAND_SHARE_OF_PEAK * recording.peakVolts());
    return to - from < FEWEST_SAMPLES ? found : ResidueFit.fit(recording, from, to, tight);
  }

  /**
   * The end of what is shown.
   *
   * @param seconds on the capture's own time axis
   * @param isBack whether a voltage comes back after it, too late to be measured
   */
  record End(double seconds, boolean isBack) {}

  End end() {
    int left = firstLeft();
    boolean isBack = left >= 0;
    int last = isBack ? opened + left - 1 : recording.length() - 1;
    int hidden = Math.max(hiddenByCrossing(last), isBack ? hiddenByRise(left) : 0);
    return new End(recording.time().secondsAt(Math.max(opened, last - hidden)), isBack);
  }

  /** The deviation from the residue from the opening on, each averaged with those after it. */
  private double[] averages() {
    int width = Departure.averagingSamples(recording);
    double[] deviations = new double[Math.max(0, recording.length() - opened)];
    for (int i = 0; i < deviations.length; i++) {
      double seconds = recording.time().secondsAt(opened + i);
      deviations[i] = recording.volts()[opened + i] - residue.voltsAt(seconds);
    }
    double[] averages = new double[deviations.length];
    double sum = 0;
    int held = 0;
    for (int i = deviations.length - 1; i >= 0; i--) {
      sum += deviations[i];
      if (held < width) {
        held++;
      } else {
        sum -= deviations[i + width];
      }
      averages[i] = sum / held;
    }
    return averages;
  }

  private double band(double noiseVolts) {
    double misfit = 0;
    for (int i = (int) (SETTLED_SHARE * explained); i < DEAD_SHARE * explained; i++) {
      misfit = Math.max(misfit, Math.abs(apart[i]));
    }
    double peak = recording.peakVolts();
    double noise = NOISES * noiseVolts / Math.sqrt(Departure.averagingSamples(recording));
    double least = Math.max(noise, LEAST_BAND_SHARE_OF_PEAK * peak);
    return Math.max(least, Math.min(MISFITS * misfit, MOST_BAND_SHARE_OF_PEAK * peak));
  }

  /**
   * Where the averages leave the residue, looked for backwards from one that is far away; -1 where
   * none is. A voltage that rises slowly passes through the residue again, for a moment.
   */
  private int firstLeft() {
    double back = Math.max(BACK_SHARE_OF_PEAK * recording.peakVolts(), 2 * band);
    int last = apart.length - Departure.averagingSamples(recording);
    int first = -1;
    for (int i = last; i >= DEAD_SHARE * explained; i--) {
      double now = Math.abs(apart[i]);
      boolean isPart = first >= 0 && first - i <= recording.samplesIn(MOMENT_SECONDS);
      if (now > (isPart || i == last ? band : back)) {
        first = i;
      }
    }
    return first;
  }

  /** The longest for which a supply that crosses the residue before {@code last} stays unseen. */
  private int hiddenByCrossing(int last) {
    double omega = 2 * Math.PI * recording.task().nominalFrequencyHertz();
    int longest = 0;
    for (int degrees = 0; degrees < ANGLES; degrees++) {
      int hidden = 0;
      while (last - hidden > opened
          && Math.abs(
                  recording.peakVolts()
                          * Math.sin(
                              Math.toRadians(degrees)
                                  - omega * hidden * recording.time().intervalSeconds())
                      - residue.voltsAt(recording.time().secondsAt(last - hidden)))
              <= band) {
        hidden++;
      }
      longest = Math.max(longest, hidden);
    }
    return longest;
  }

  /** A slow rise has begun long before it shows. */
  private int hiddenByRise(int left) {
    int grown = left;
    while (grown < apart.length && Math.abs(apart[grown]) < GROWN * band) {
      grown++;
    }
    return grown - left;
  }
}
