package mainsgap.transfer.bank;

/**
 * What made a capture.
 *
 * @param lossSeconds the first opening
 * @param returnSeconds the instant from which the load is fed without a break; infinite where it is
 *     never fed again
 * @param furtherInterruptions breaks later than one cycle after the return
 * @param returnsInRest whether the output rests where it comes back to a dead load: no instant can
 *     be told in a rest, so that such captures stay out of the overall gate
 * @param sampleMicros the sample interval
 * @param noiseShare the noise's standard deviation as a share of nominal peak
 */
public record Truth(
    double lossSeconds,
    double returnSeconds,
    int furtherInterruptions,
    boolean returnsInRest,
    double sampleMicros,
    double noiseShare) {

  /** Return minus loss. */
  public double transferMillis() {
    return (returnSeconds - lossSeconds) * 1e3;
  }
}
