package mainsgap.signal;

import java.util.Arrays;
import java.util.function.IntToDoubleFunction;

/**
 * The spectrum of a window of whole cycles of a fundamental whose frequency is known, with the
 * lines and the grouping of IEC 61000-4-7 (groups: as its users' manuals tell them; subgroups: from
 * memory). A window of n cycles has n lines for each harmonic order. The window is rectangular and
 * is synchronised to the frequency that was fitted: a fraction of a sample at its end counts by
 * that fraction. Immutable.
 */
public final class Spectrum {
  /** Longer windows are summed in blocks: enough for order 40 of a window of 12 cycles. */
  private static final int MOST_BLOCKS = 4_096;

  private final int cycles;
  private final int orders;
  private final double[] rmsVolts;

  private Spectrum(int cycles, int orders, double[] rmsVolts) {
    this.cycles = cycles;
    this.orders = orders;
    this.rmsVolts = rmsVolts;
  }

  /**
   * The window of {@code cycles} cycles from sample {@code from} on.
   *
   * @param volts the samples of {@code time}, left unchanged
   * @param cycles at least 1
   * @param hertz the frequency of the fundamental, above 0
   * @param orders the highest harmonic order, at least 1; fewer where the sample rate does not
   *     carry them
   * @throws IllegalArgumentException if the window does not lie in {@code volts}
   */
  public static Spectrum of(
      double[] volts, TimeAxis time, int from, int cycles, double hertz, int orders) {
    double window = cycles / hertz / time.intervalSeconds();
    if (from < 0 || !(from + samples(cycles, hertz, time) <= volts.length)) {
      throw new IllegalArgumentException(
          "a window of "
              + window
              + " samples from "
              + from
              + " on needs more than "
              + volts.length);
    }
    int carried = (int) Math.floor(0.4 * time.sampleRateHertz() / hertz);
    int used = Math.max(1, Math.min(orders, carried));
    int block = (int) Math.ceil(window / MOST_BLOCKS);
    double[] sums = blockSums(volts, from, window, block);
    int lines = cycles * used + cycles / 2 + 1;
    return new Spectrum(cycles, used, lines(sums, window, block, lines));
  }

  /** The samples that such a window needs. */
  public static int samples(int cycles, double hertz, TimeAxis time) {
    return (int) Math.floor(cycles / hertz / time.intervalSeconds()) + 2;
  }

  /** Trapezoidal weights from the first sample to the window's end, which lies between two. */
  private static double[] blockSums(double[] volts, int from, double window, int block) {
    int whole = (int) Math.floor(window);
    double rest = window - whole;
    double[] sums = new double[(whole + 1) / block + 1];
    for (int i = 0; i < whole; i++) {
      sums[i / block] += volts[from + i];
    }
    sums[0] -= volts[from] / 2;
    sums[whole / block] += (0.5 + rest - rest * rest / 2) * volts[from + whole];
    sums[(whole + 1) / block] += rest * rest / 2 * volts[from + whole + 1];
    return sums;
  }

  /**
   * The lines' RMS values; line 0 is the mean with its sign. Sums are taken in pairs about the
   * middle, whose cosines are the same and whose sines are opposite.
   */
  private static double[] lines(double[] sums, double window, int block, int lines) {
    double[] cos = new double[lines];
    double[] sin = new double[lines];
    double[] turnCos = new double[lines];
    double[] turnSin = new double[lines];
    double[] real = new double[lines];
    double[] imaginary = new double[lines];
    for (int k = 0; k < lines; k++) {
      double turn = 2 * Math.PI * k * block / window;
      double firstTurn = sums.length % 2 == 0 ? turn / 2 : turn;
      cos[k] = Math.cos(firstTurn);
      sin[k] = Math.sin(firstTurn);
      turnCos[k] = Math.cos(turn);
      turnSin[k] = Math.sin(turn);
    }
    if (sums.length % 2 == 1) {
      Arrays.fill(real, sums[sums.length / 2]);
    }
    for (int i = (sums.length + 1) / 2; i < sums.length; i++) {
      double sum = sums[i] + sums[sums.length - 1 - i];
      double difference = sums[i] - sums[sums.length - 1 - i];
      for (int k = 0; k < lines; k++) {
        real[k] += sum * cos[k];
        imaginary[k] += difference * sin[k];
        double turned = cos[k] * turnCos[k] - sin[k] * turnSin[k];
        sin[k] = sin[k] * turnCos[k] + cos[k] * turnSin[k];
        cos[k] = turned;
      }
    }
    double[] rms = new double[lines];
    rms[0] = real[0] / window;
    for (int k = 1; k < lines; k++) {
      double amplitude = 2 * Math.hypot(real[k], imaginary[k]) / window;
      rms[k] = amplitude / Math.sqrt(2) / passed(Math.PI * k / window, block);
    }
    return rms;
  }

  /** What a sum of {@code block} neighbours passes of a line, 1 for a line of frequency 0. */
  private static double passed(double halfTurn, int block) {
    return Math.sin(block * halfTurn) / (block * Math.sin(halfTurn));
  }

  /** The cycles of the window. */
  public int cycles() {
    return cycles;
  }

  /** The highest harmonic order. */
  public int orders() {
    return orders;
  }

  /** The mean of the window. */
  public double meanVolts() {
    return rmsVolts[0];
  }

  /** The RMS value of the line of harmonic {@code order}, 1 to {@link #orders()}. */
  public double lineVolts(int order) {
    return rmsVolts[order * cycles];
  }

  /** The RMS value of a harmonic with the lines beside it: its subgroup. */
  public double subgroupVolts(int order) {
    double squares = 0;
    for (int k = order * cycles - 1; k <= order * cycles + 1; k++) {
      squares += rmsVolts[k] * rmsVolts[k];
    }
    return Math.sqrt(squares);
  }

  /**
   * The RMS value of all lines about a harmonic up to half-way to the next, those half-way at half
   * weight: its group.
   */
  public double groupVolts(int order) {
    int half = cycles / 2;
    double squares = 0;
    for (int k = order * cycles - half; k <= order * cycles + half; k++) {
      boolean atEdge = 2 * Math.abs(k - order * cycles) == cycles;
      squares += (atEdge ? 0.5 : 1) * rmsVolts[k] * rmsVolts[k];
    }
    return Math.sqrt(squares);
  }

  /** Total harmonic distortion by single lines, in per cent of the fundamental. */
  public double lineDistortionPercent() {
    return distortionPercent(this::lineVolts);
  }

  /** Total harmonic distortion by subgroups (THDS), in per cent of the fundamental's subgroup. */
  public double subgroupDistortionPercent() {
    return distortionPercent(this::subgroupVolts);
  }

  /** Total harmonic distortion by groups (THDG), in per cent of the fundamental's group. */
  public double groupDistortionPercent() {
    return distortionPercent(this::groupVolts);
  }

  private double distortionPercent(IntToDoubleFunction voltsOfOrder) {
    double squares = 0;
    for (int order = 2; order <= orders; order++) {
      double volts = voltsOfOrder.applyAsDouble(order);
      squares += volts * volts;
    }
    return 100 * Math.sqrt(squares) / voltsOfOrder.applyAsDouble(1);
  }
}
