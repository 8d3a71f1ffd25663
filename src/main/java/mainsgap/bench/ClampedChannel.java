package mainsgap.bench;

import mainsgap.scope.CaptureRequest.Input;
import mainsgap.settings.SettingsTable;

/**
 * A channel that sees the load current through a clamp.
 *
 * @param number the instrument's channel, from 1
 * @param amperesPerVolt in the conductor for each volt at the input
 * @param peakAmperes what it sees at most
 */
public record ClampedChannel(int number, double amperesPerVolt, double peakAmperes) {
  static final String[] KEYS = {"number", "amperes-per-volt", "peak-amperes"};

  private static final double LARGEST = 10_000;

  static ClampedChannel read(SettingsTable table) {
    return new ClampedChannel(
        table.whole("number", 1, ProbedChannel.MOST_CHANNELS),
        table.number("amperes-per-volt", 1e-3, LARGEST),
        table.number("peak-amperes", 1e-3, LARGEST));
  }

  /** The samples of this channel are amperes. */
  Input input() {
    return new Input(number, amperesPerVolt, peakAmperes);
  }

  String words(String role) {
    return role
        + ", "
        + Words.plain(amperesPerVolt)
        + " A for each volt, up to "
        + Words.plain(peakAmperes)
        + " A peak";
  }
}
