package mainsgap.signal;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/**
 * Finds recordings in which each sample stands several times in a row, as a display memory or a
 * converted file fills up: they tell no instant better than the samples that were taken.
 */
public final class HeldSamples {
  /** Fewer changes may fall on a grid by chance. */
  private static final int FEWEST_CHANGES = 50;

  /** A voltage of fewer levels has steps of its own. */
  private static final int FEWEST_LEVELS = 20;

  private HeldSamples() {}

  /**
   * How many times in a row each sample stands: all changes lie on a grid of so many samples.
   *
   * @return 1 where each stands once
   */
  public static int times(Waveform waveform) {
    int first = nextChange(waveform, 1);
    int grid = 0;
    int changes = 0;
    Set<Double> levels = new HashSet<>();
    for (int at = first; at < waveform.length() && grid != 1; at = nextChange(waveform, at + 1)) {
      grid = greatestCommonDivisor(grid, at - first);
      changes++;
      if (levels.size() < FEWEST_LEVELS) {
        levels.add(waveform.voltsAt(at));
      }
    }
    return changes >= FEWEST_CHANGES && levels.size() >= FEWEST_LEVELS ? grid : 1;
  }

  /**
   * The capture with each sample once, at the place where it stands first; itself where each stands
   * once. The output tells how often; what changes between in other channels is left out.
   */
  public static Capture once(Capture capture) {
    int times = times(capture.output());
    if (times == 1) {
      return capture;
    }
    int first = nextChange(capture.output(), 1) % times;
    TimeAxis time = capture.time();
    int length = (time.length() - first + times - 1) / times;
    Map<ChannelRole, Waveform> waveforms = new EnumMap<>(ChannelRole.class);
    capture
        .waveforms()
        .forEach((role, waveform) -> waveforms.put(role, every(waveform, first, times, length)));
    return new Capture(
        new TimeAxis(
            time.secondsAt(first),
            times * time.intervalSeconds(),
            length,
            time.timeBasePpm(),
            time.timeBaseAssumed()),
        waveforms);
  }

  private static int nextChange(Waveform waveform, int from) {
    CodeFormat format = waveform.format();
    byte[] block = waveform.block();
    int bytes = format.bytesPerCode();
    int at = from;
    while (at < waveform.length()
        && Arrays.equals(
            block, (at - 1) * bytes, at * bytes, block, at * bytes, (at + 1) * bytes)) {
      at++;
    }
    return at;
  }

  private static int greatestCommonDivisor(int a, int b) {
    return b == 0 ? a : greatestCommonDivisor(b, a % b);
  }

  private static Waveform every(Waveform waveform, int first, int times, int length) {
    int bytes = waveform.format().bytesPerCode();
    byte[] kept = new byte[length * bytes];
    for (int i = 0; i < length; i++) {
      System.arraycopy(waveform.block(), (first + i * times) * bytes, kept, i * bytes, bytes);
    }
    return new Waveform(kept, waveform.format(), waveform.scale());
  }
}
