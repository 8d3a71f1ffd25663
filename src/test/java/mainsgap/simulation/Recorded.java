package mainsgap.simulation;

import java.util.stream.IntStream;

/**
 * What the converter of a simulated scope has recorded, past the wire and its dialect.
 *
 * @param volts at the probe tip
 * @param clipped whether the converter was at one of its ends
 */
@SuppressWarnings("ArrayRecordComponent") // read by tests, never compared
public record Recorded(
    double firstSampleSeconds, double intervalSeconds, double[] volts, boolean[] clipped) {

  /** The record that {@code instrument} holds of {@code channel}, from 1. */
  public static Recorded of(SimulatedBench bench, SimulatedInstrument instrument, int channel) {
    ScopeRecord record = bench.core(instrument).record().orElseThrow();
    RecordPlan plan = record.plan();
    VoltageRange range = plan.ranges().get(channel - 1);
    short[] codes = record.codes(channel);
    int highest = (1 << record.bits()) - 1;
    double step = range.spanVolts() / (1 << record.bits());
    double[] volts =
        IntStream.range(0, codes.length)
            .mapToDouble(i -> range.lowestVolts() + codes[i] * step)
            .toArray();
    boolean[] clipped = new boolean[codes.length];
    for (int i = 0; i < clipped.length; i++) {
      clipped[i] = codes[i] == 0 || codes[i] == highest;
    }
    return new Recorded(plan.firstSampleSeconds(), plan.intervalSeconds(), volts, clipped);
  }
}
