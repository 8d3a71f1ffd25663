package mainsgap.signal;

/**
 * The time axis that the channels of a capture share.
 *
 * @param firstSampleSeconds the time of sample 0 in seconds; the trigger is at 0 where there is one
 * @param intervalSeconds the sample interval in seconds, above 0
 * @param length the number of samples, at least 1
 * @param timeBasePpm the accuracy of the time base in parts per million, as its maker states it
 * @param timeBaseAssumed whether that accuracy is only assumed, as nobody stated one
 */
public record TimeAxis(
    double firstSampleSeconds,
    double intervalSeconds,
    int length,
    double timeBasePpm,
    boolean timeBaseAssumed) {

  /** An axis whose accuracy is stated. */
  public TimeAxis(
      double firstSampleSeconds, double intervalSeconds, int length, double timeBasePpm) {
    this(firstSampleSeconds, intervalSeconds, length, timeBasePpm, false);
  }

  /** Checks that the axis runs forward and has samples. */
  public TimeAxis {
    if (!Double.isFinite(firstSampleSeconds)
        || !Double.isFinite(intervalSeconds)
        || !(intervalSeconds > 0)) {
      throw new IllegalArgumentException(
          "a time axis needs a finite start and an interval above 0 s, found start "
              + firstSampleSeconds
              + " s, interval "
              + intervalSeconds
              + " s");
    }
    if (length < 1) {
      throw new IllegalArgumentException("a time axis needs at least 1 sample, found " + length);
    }
    if (!(timeBasePpm >= 0)) {
      throw new IllegalArgumentException(
          "the accuracy of a time base is at least 0 ppm, found " + timeBasePpm);
    }
  }

  /** The time of sample {@code index} in seconds; a fraction lies between two samples. */
  public double secondsAt(double index) {
    return firstSampleSeconds + index * intervalSeconds;
  }

  /** The place of {@code seconds} on the axis, in samples from sample 0. */
  public double indexAt(double seconds) {
    return (seconds - firstSampleSeconds) / intervalSeconds;
  }

  /** The sample rate in hertz. */
  public double sampleRateHertz() {
    return 1 / intervalSeconds;
  }

  /** The time from the first sample to the last one, in seconds. */
  public double durationSeconds() {
    return (length - 1) * intervalSeconds;
  }
}
