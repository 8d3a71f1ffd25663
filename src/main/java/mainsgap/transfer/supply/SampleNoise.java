package mainsgap.transfer.supply;

import mainsgap.signal.HarmonicFit;

/** The noise of single samples, as a search for departures goes by it. */
public final class SampleNoise {
  /** Noise is what so many harmonics leave. */
  private static final int ORDERS = 15;

  /** Sines and cosines, and an offset. */
  private static final int UNKNOWNS = 2 * ORDERS + 1;

  /** Noise that is more is none: it is the shape of the cycle, or a disturbance. */
  private static final double MOST_SHARE_OF_PEAK = 0.05;

  private SampleNoise() {}

  /**
   * The standard deviation in two cycles.
   *
   * @param from their first sample; it lies two cycles before the end of the record, or sooner
   * @param hertz the frequency of the supply there
   * @throws mainsgap.signal.FitException where they cannot be fitted
   */
  public static double volts(Recording recording, int from, double hertz) {
    int samples = inTwoCycles(recording);
    double left =
        HarmonicFit.fit(
                recording.volts(), recording.time(), from, from + samples, hertz, ORDERS, false)
            .noiseVolts();
    return left * Math.sqrt((double) samples / Math.max(1, samples - UNKNOWNS));
  }

  /** As much of it as noise can be. */
  public static double atMost(Recording recording, double volts) {
    return Math.min(volts, MOST_SHARE_OF_PEAK * recording.peakVolts());
  }

  /** The samples of two cycles; all where there are fewer. */
  public static int inTwoCycles(Recording recording) {
    return (int) Math.min(recording.length(), Math.ceil(2 * recording.samplesPerCycle()));
  }
}
