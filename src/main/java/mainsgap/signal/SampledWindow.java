package mainsgap.signal;

/**
 * Every {@code stride}-th sample of part of a record.
 *
 * @param volts of the whole record, left unchanged
 * @param from the first sample
 * @param stride at least 1
 * @param count the samples taken
 * @param intervalSeconds between the samples taken
 */
@SuppressWarnings("ArrayRecordComponent") // owned by the caller for the time of a fit
record SampledWindow(double[] volts, int from, int stride, int count, double intervalSeconds) {

  /** Samples {@code from} (inclusive) to {@code to} (exclusive) of a record. */
  static SampledWindow of(double[] volts, TimeAxis time, int from, int to, int stride) {
    int count = (to - from + stride - 1) / stride;
    return new SampledWindow(volts, from, stride, count, stride * time.intervalSeconds());
  }

  double voltsAt(int index) {
    return volts[from + index * stride];
  }

  /** The middle of the samples taken, in samples of the record. */
  double middle() {
    return from + stride * (count - 1) / 2.0;
  }
}
