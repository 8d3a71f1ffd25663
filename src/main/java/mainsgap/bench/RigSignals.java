package mainsgap.bench;

import java.util.Set;
import mainsgap.scope.CaptureRequest.Input;
import mainsgap.scope.EventSignal;
import mainsgap.settings.SettingsTable;
import org.jspecify.annotations.Nullable;

/**
 * The small isolated signals of a rig, which tell of the event.
 *
 * @param markerInput the channel that sees one; null where none does
 * @param marker what it sees; null with the channel
 * @param external what is at the external trigger input; null where nothing is
 */
record RigSignals(
    @Nullable Input markerInput, @Nullable EventSignal marker, @Nullable EventSignal external) {
  static final RigSignals NONE = new RigSignals(null, null, null);

  static final String[] MARKER_KEYS = {
    "number", "probe-factor", "follows", "low-volts", "high-volts", "high-means", "delay-millis"
  };
  static final String[] EXTERNAL_KEYS = {
    "follows", "low-volts", "high-volts", "high-means", "delay-millis"
  };

  private static final int MOST_CHANNELS = 16;

  /** Such a signal is isolated from mains and safe to touch: extra-low voltage. */
  private static final double LARGEST_VOLTS = 50;

  private static final double LONGEST_DELAY_MILLIS = 10_000;

  /** What the upper level of a signal means. */
  private enum HighMeans {
    MAINS,
    BACKUP
  }

  /**
   * Reads {@code channels.marker}, which may have none of the channels {@code taken}, and {@code
   * external-input}, where they are there.
   */
  static RigSignals read(SettingsTable root, SettingsTable channels, Set<Integer> taken) {
    SettingsTable marker = channels.optionalTable("marker", MARKER_KEYS).orElse(null);
    Input input = marker == null ? null : input(marker);
    if (marker != null && input != null && taken.contains(input.channel())) {
      throw marker.complaint(
          "number",
          "is " + input.channel() + ", which is another's: connect the signal to its own");
    }
    EventSignal external =
        root.optionalTable("external-input", EXTERNAL_KEYS).map(RigSignals::signal).orElse(null);
    return new RigSignals(input, marker == null ? null : signal(marker), external);
  }

  private static Input input(SettingsTable table) {
    return Input.ofSupply(
        table.whole("number", 1, MOST_CHANNELS),
        table.optionalNumber("probe-factor", 1e-3, 1000).orElse(1));
  }

  private static EventSignal signal(SettingsTable table) {
    double low = table.number("low-volts", -LARGEST_VOLTS, LARGEST_VOLTS);
    double high = table.number("high-volts", -LARGEST_VOLTS, LARGEST_VOLTS);
    if (high <= low) {
      throw table.complaint(
          "high-volts",
          "is " + Words.plain(high) + ", not above low-volts: write the signal's upper level");
    }
    return new EventSignal(
        table.choice("follows", EventSignal.Follows.class),
        low,
        high,
        table.choice("high-means", HighMeans.class) == HighMeans.MAINS,
        table.optionalNumber("delay-millis", 0, LONGEST_DELAY_MILLIS).orElse(0) / 1e3);
  }
}
