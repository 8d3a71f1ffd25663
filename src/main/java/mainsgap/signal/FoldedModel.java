package mainsgap.signal;

import java.util.Arrays;

/**
 * A supply of any shape: the mean cycle of the record, and how far samples spread about it at each
 * angle. It follows the steps of stepped and quasi-square outputs, at which a sum of harmonics
 * rings; where a step's place is uncertain by a bin, the spread says so. Immutable.
 */
public final class FoldedModel implements PeriodicModel {
  private static final int FEWEST_BINS = 40;

  /** More bins would follow the noise rather than the shape. */
  private static final int MOST_BINS = 500;

  private static final int WIDENED_BINS = 2;

  private final HarmonicModel fundamental;
  private final double[] meanVolts;
  private final double[] spreadVolts;

  private FoldedModel(HarmonicModel fundamental, double[] meanVolts, double[] spreadVolts) {
    this.fundamental = fundamental;
    this.meanVolts = meanVolts;
    this.spreadVolts = spreadVolts;
  }

  /**
   * Folds samples {@code from} (inclusive) to {@code to} (exclusive) onto one cycle of {@code
   * fundamental}, in so many bins that about {@code samplesPerBin} fall into each; an empty bin
   * takes its neighbour's values.
   */
  public static FoldedModel fold(
      double[] volts,
      TimeAxis time,
      int from,
      int to,
      HarmonicModel fundamental,
      int samplesPerBin) {
    double perCycle = time.sampleRateHertz() / fundamental.frequencyHertz();
    double most = Math.min(MOST_BINS, Math.min(perCycle, (double) (to - from) / samplesPerBin));
    int bins = (int) Math.max(FEWEST_BINS, most);
    double[] sum = new double[bins];
    double[] squares = new double[bins];
    int[] count = new int[bins];
    for (int i = from; i < to; i++) {
      int bin = binAt(time.secondsAt(i), fundamental, bins);
      sum[bin] += volts[i];
      squares[bin] += volts[i] * volts[i];
      count[bin]++;
    }
    double[] mean = new double[bins];
    double[] spread = new double[bins];
    int filled = 0;
    for (int pass = 0; pass < 2; pass++) {
      for (int b = 0; b < bins; b++) {
        int from0 = count[b] > 0 ? b : filled;
        filled = from0;
        if (count[from0] > 0) {
          mean[b] = sum[from0] / count[from0];
          double variance = squares[from0] / count[from0] - mean[b] * mean[b];
          spread[b] = Math.sqrt(Math.max(0, variance));
        }
      }
    }
    return new FoldedModel(fundamental, mean, widened(spread));
  }

  /** A step may fall some bins earlier or later in a cycle that was not folded in. */
  private static double[] widened(double[] spread) {
    int bins = spread.length;
    double[] wide = new double[bins];
    for (int b = 0; b < bins; b++) {
      for (int shift = -WIDENED_BINS; shift <= WIDENED_BINS; shift++) {
        wide[b] = Math.max(wide[b], spread[(b + shift + bins) % bins]);
      }
    }
    return wide;
  }

  /** The median of the spreads. */
  @Override
  public double usualSpreadVolts() {
    double[] sorted = spreadVolts.clone();
    Arrays.sort(sorted);
    return sorted[sorted.length / 2];
  }

  @Override
  public double voltsAt(double seconds) {
    return meanVolts[binAt(seconds, fundamental, meanVolts.length)];
  }

  @Override
  public double frequencyHertz() {
    return fundamental.frequencyHertz();
  }

  @Override
  public double amplitudeVolts() {
    return fundamental.amplitudeVolts();
  }

  @Override
  public double angleDegreesAt(double seconds) {
    return fundamental.angleDegreesAt(seconds);
  }

  @Override
  public double spreadVoltsAt(double seconds) {
    return spreadVolts[binAt(seconds, fundamental, spreadVolts.length)];
  }

  @Override
  public boolean hasSteps() {
    return true;
  }

  private static int binAt(double seconds, HarmonicModel fundamental, int bins) {
    double cycles = fundamental.frequencyHertz() * (seconds - fundamental.referenceSeconds());
    return Math.min(bins - 1, (int) ((cycles - Math.floor(cycles)) * bins));
  }
}
