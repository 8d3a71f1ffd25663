package mainsgap.desk.rig;

import java.util.List;
import mainsgap.bench.ClampedChannel;
import mainsgap.bench.ProbedChannel;
import org.jspecify.annotations.Nullable;

/** The clamp around the load's line. */
final class ClampFields {
  private static final double SMALLEST = 1e-3;
  private static final double LARGEST = 10_000;

  final Field<String> connected =
      new Field<>("load-current.connected", "connected", Readings.words());
  final Field<Integer> number =
      new Field<>(
          "load-current.number",
          "the channel's number",
          Readings.whole(1, ProbedChannel.MOST_CHANNELS));
  final Field<Double> amperesPerVolt =
      new Field<>(
          "load-current.amperes-per-volt",
          "the clamp's scale",
          Readings.number(SMALLEST, LARGEST, "A for each volt"));
  final Field<Double> peakAmperes =
      new Field<>(
          "load-current.peak-amperes",
          "the largest current",
          Readings.number(SMALLEST, LARGEST, "A"));

  List<Field<?>> all() {
    return List.of(connected, number, amperesPerVolt, peakAmperes);
  }

  boolean isConnected() {
    return connected.text().equals(ClipFields.YES);
  }

  void show(@Nullable ClampedChannel clamp) {
    connected.type(clamp == null ? ClipFields.NO : ClipFields.YES);
    number.type(clamp == null ? null : clamp.number());
    amperesPerVolt.type(clamp == null ? null : Readings.plain(clamp.amperesPerVolt()));
    peakAmperes.type(clamp == null ? null : Readings.plain(clamp.peakAmperes()));
  }

  /** The clamp; null where there is none, or something is not said yet. */
  @Nullable ClampedChannel clamp() {
    Integer channel = number.value();
    Double scale = amperesPerVolt.value();
    Double peak = peakAmperes.value();
    return !isConnected() || channel == null || scale == null || peak == null
        ? null
        : new ClampedChannel(channel, scale, peak);
  }
}
