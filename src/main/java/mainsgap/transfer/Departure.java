package mainsgap.transfer;

/**
 * Finds roughly where a steady supply stops repeating itself: the first place at which the voltage,
 * averaged over a short while, differs from what it was about one cycle earlier. 'About', so that
 * the steps of stepped outputs may fall a little earlier or later.
 */
final class Departure {
  /** Longer than a spike, shorter than the shortest gap that is looked for. */
  private static final double AVERAGING_SECONDS = 0.1e-3;

  /** Mains moves by a few per cent from cycle to cycle; a gap of 0.8 ms moves it by 12 or more. */
  private static final double SHARE_OF_PEAK = 0.08;

  /** Noise alone passes this many standard deviations less than once in a record of 10^7. */
  private static final double NOISE_FACTOR = 6;

  /** How much earlier or later a cycle may repeat itself. */
  private static final double TIMING_SECONDS = 20e-6;

  private Departure() {}

  /**
   * The smallest difference that counts.
   *
   * @param noiseVolts the standard deviation of one sample's noise
   */
  static double thresholdVolts(Recording recording, double noiseVolts) {
    double averaged = noiseVolts * Math.sqrt(2.0 / averagingSamples(recording));
    return Math.max(SHARE_OF_PEAK * recording.peakVolts(), NOISE_FACTOR * averaged);
  }

  /** The samples that are averaged. */
  static int averagingSamples(Recording recording) {
    return recording.samplesIn(AVERAGING_SECONDS);
  }

  /**
   * The first sample, from {@code from} on, of the first average that differs by more than {@code
   * thresholdVolts}; -1 where there is none before {@code to}.
   *
   * @param periodSamples one cycle of the supply
   */
  static int find(
      Recording recording, int from, int to, double periodSamples, double thresholdVolts) {
    int width = averagingSamples(recording);
    int timing = recording.samplesIn(TIMING_SECONDS);
    int earlier = (int) Math.ceil(periodSamples);
    double part = earlier - periodSamples;
    int first = Math.max(from, earlier + timing);
    double[] recent = new double[width];
    double sum = 0;
    for (int i = first; i < to; i++) {
      double difference = difference(recording.volts(), i, earlier, part, timing);
      int slot = (i - first) % width;
      sum += difference - recent[slot];
      recent[slot] = difference;
      if (i - width + 1 >= first && Math.abs(sum) > thresholdVolts * width) {
        return i - width + 1;
      }
    }
    return -1;
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
