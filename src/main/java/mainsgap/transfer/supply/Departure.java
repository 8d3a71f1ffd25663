package mainsgap.transfer.supply;

/**
 * Finds roughly where a steady supply stops repeating itself: the first place at which the voltage,
 * averaged over a short while, differs from what it was about one cycle earlier. 'About', so that
 * the steps of stepped outputs may fall a little earlier or later.
 */
public final class Departure {
  /** Longer than a spike, shorter than the shortest gap that is looked for. */
  private static final double AVERAGING_SECONDS = 0.1e-3;

  /** Mains moves by a few per cent from cycle to cycle; a gap of 0.8 ms moves it by 12 or more. */
  private static final double SHARE_OF_PEAK = 0.08;

  /** Noise alone passes this many standard deviations less than once in a record of 10^7. */
  private static final double NOISE_FACTOR = 6;

  /** Above the smallest that counts, one in twenty is missed: common practice, 5 % on one side. */
  private static final double SURE_FACTOR = 1.645;

  /** How much earlier or later a cycle may repeat itself. */
  private static final double TIMING_SECONDS = 20e-6;

  private Departure() {}

  /**
   * The smallest difference that counts.
   *
   * @param noiseVolts the standard deviation of one sample's noise
   */
  public static double thresholdVolts(Recording recording, double noiseVolts) {
    double averaged = averagedNoiseVolts(recording, noiseVolts);
    return Math.max(SHARE_OF_PEAK * recording.peakVolts(), NOISE_FACTOR * averaged);
  }

  /** A difference that is found, whatever the noise does to it, but for one in twenty. */
  private static double surelySeenVolts(Recording recording, double noiseVolts) {
    double averaged = averagedNoiseVolts(recording, noiseVolts);
    return thresholdVolts(recording, noiseVolts) + SURE_FACTOR * averaged;
  }

  private static double averagedNoiseVolts(Recording recording, double noiseVolts) {
    return noiseVolts * Math.sqrt(2.0 / averagingSamples(recording));
  }

  /**
   * The shortest gap that is found wherever it falls in some cycles of a supply. One moves the
   * voltage least where that is lowest, about a crossing or in a rest. Beside what is too low to be
   * missed one average must lie in the gap whose whole difference is surely seen, although the
   * samples fall where they will, and the cycle may repeat itself a little earlier or later.
   *
   * @param noiseVolts the standard deviation of one sample's noise
   * @param from the first sample of the cycles
   * @param to one after the last
   */
  public static double shortestGapSeconds(
      Recording recording, double noiseVolts, int from, int to) {
    int width = averagingSamples(recording);
    double seen = width * surelySeenVolts(recording, noiseVolts);
    double[] upTo = new double[to - from + 1];
    for (int k = 0; k < to - from; k++) {
      upTo[k + 1] = upTo[k] + recording.volts()[from + k];
    }
    int averages = Math.max(0, to - from - width + 1);
    int low = LongestRun.of(0, averages, k -> Math.abs(upTo[k + width] - upTo[k]) < seen);
    double interval = recording.time().intervalSeconds();
    return (low + 2 * width + 2) * interval + 2 * TIMING_SECONDS;
  }

  /** The samples that are averaged. */
  public static int averagingSamples(Recording recording) {
    return recording.samplesIn(AVERAGING_SECONDS);
  }

  /**
   * The first sample, from {@code from} on, of the first average that differs by more than {@code
   * thresholdVolts}; -1 where there is none before {@code to}.
   *
   * @param periodSamples one cycle of the supply
   */
  public static int find(
      Recording recording, int from, int to, double periodSamples, double thresholdVolts) {
    return new Search(recording, periodSamples, thresholdVolts).firstFrom(from, to);
  }

  /**
   * One search. Averages are looked at singly only where the voltages of two neighbouring blocks
   * differ enough, sign and timing left aside, for any average across them to count: elsewhere, and
   * that is nearly everywhere, one difference a sample is enough.
   */
  private static final class Search {
    private final double[] volts;
    private final int width;
    private final int timing;
    private final int earlier;
    private final double part;
    private final double threshold;

    Search(Recording recording, double periodSamples, double thresholdVolts) {
      volts = recording.volts();
      width = averagingSamples(recording);
      timing = recording.samplesIn(TIMING_SECONDS);
      earlier = (int) Math.ceil(periodSamples);
      part = earlier - periodSamples;
      threshold = thresholdVolts * width;
    }

    int firstFrom(int from, int to) {
      int first = Math.max(from, earlier + timing);
      double before = 0;
      for (int block = first; block < to; block += width) {
        int end = Math.min(to, block + width);
        double here = spread(block, end);
        if (before + here > threshold) {
          int found = firstAverage(Math.max(first, block - width), block, end);
          if (found >= 0) {
            return found;
          }
        }
        before = here;
      }
      return -1;
    }

    /** The sum of the differences from one cycle earlier, without sign: no average exceeds it. */
    private double spread(int from, int to) {
      double sum = 0;
      for (int i = from; i < to; i++) {
        sum += Math.abs(volts[i] - between(volts, i - earlier, part));
      }
      return sum;
    }

    /** The first sample of the first average that counts and ends in {@code from} to {@code to}. */
    private int firstAverage(int start, int from, int to) {
      double[] recent = new double[width];
      double sum = 0;
      for (int i = start; i < to; i++) {
        double difference = difference(volts, i, earlier, part, timing);
        int slot = (i - start) % width;
        sum += difference - recent[slot];
        recent[slot] = difference;
        if (i >= from && i - width + 1 >= start && Math.abs(sum) > threshold) {
          return i - width + 1;
        }
      }
      return -1;
    }
  }

  /**
   * How far a sample lies outside what the voltage was about one cycle, {@code earlier - part}
   * samples, earlier.
   */
  private static double difference(
      double[] volts, int index, int earlier, double part, int timing) {
    int at = index - earlier;
    double now = between(volts, at, part);
    double sooner = between(volts, at - timing, part);
    double later = between(volts, at + timing, part);
    double low = Math.min(now, Math.min(sooner, later));
    double high = Math.max(now, Math.max(sooner, later));
    double here = volts[index];
    return here > high ? here - high : here < low ? here - low : 0;
  }

  private static double between(double[] volts, int at, double part) {
    return (1 - part) * volts[at] + part * volts[at + 1];
  }
}
