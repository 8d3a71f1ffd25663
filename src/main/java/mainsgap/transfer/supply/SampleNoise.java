package mainsgap.transfer.supply;

import mainsgap.signal.HarmonicFit;

/** The noise of single samples, as a search for departures goes by it. */
public final class SampleNoise {
  /** Noise is what so many harmonics leave. */
  private static final int ORDERS = 15;

  private static final int CYCLES = 2;

  private SampleNoise() {}

  /**
   * The standard deviation in two cycles.
   *
   * @param from their first sample; it lies two cycles before the end of the record, or sooner
   * @param hertz the frequency of the supply there
   * @throws mainsgap.signal.FitException where they cannot be fitted
   */
  public static double volts(Recording recording, int from, double hertz) {
    int to = from + cycles(recording);
    return HarmonicFit.fit(recording.volts(), recording.time(), from, to, hertz, ORDERS, false)
        .noiseVolts();
  }

  /** The samples that it is taken from. */
  public static int cycles(Recording recording) {
    return (int) Math.min(recording.length(), Math.ceil(CYCLES * recording.samplesPerCycle()));
  }
}
