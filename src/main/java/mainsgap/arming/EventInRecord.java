package mainsgap.arming;

import java.util.stream.Stream;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.Waveform;

/**
 * A first look whether a record holds a change of supply at all, before it is measured: a stretch
 * in which a supply is not what it was one cycle earlier. The limits are common practice: above
 * what mains does by itself, below any gap that could be measured.
 */
final class EventInRecord {
  private static final double CHANGED_PART_OF_PEAK = 0.2;
  private static final double SHORTEST_SECONDS = 0.2e-3;

  private EventInRecord() {}

  /** Whether the output or the mains of {@code capture} changes. */
  static boolean isIn(Capture capture, double cycleSeconds) {
    double interval = capture.time().intervalSeconds();
    int cycle = (int) Math.round(cycleSeconds / interval);
    int shortest = Math.max(1, (int) Math.ceil(SHORTEST_SECONDS / interval));
    return Stream.of(ChannelRole.OUTPUT, ChannelRole.MAINS)
        .flatMap(role -> capture.waveform(role).stream())
        .map(Waveform::volts)
        .anyMatch(volts -> changes(volts, cycle, shortest));
  }

  private static boolean changes(double[] volts, int cycle, int shortest) {
    double peak = 0;
    for (double v : volts) {
      peak = Math.max(peak, Math.abs(v));
    }
    int stretch = 0;
    for (int i = cycle; i < volts.length; i++) {
      boolean other = Math.abs(volts[i] - volts[i - cycle]) > CHANGED_PART_OF_PEAK * peak;
      stretch = other ? stretch + 1 : 0;
      if (stretch >= shortest) {
        return true;
      }
    }
    return false;
  }
}
