package mainsgap.signal;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * One recording: a time axis and a waveform for each role that was watched, the output always among
 * them.
 *
 * @param time the time axis of all waveforms
 * @param waveforms each of {@code time.length()} samples
 */
public record Capture(TimeAxis time, Map<ChannelRole, Waveform> waveforms) {

  /** Checks that the output is there and that every waveform fits the time axis. */
  public Capture {
    EnumMap<ChannelRole, Waveform> copy = new EnumMap<>(ChannelRole.class);
    copy.putAll(waveforms);
    if (!copy.containsKey(ChannelRole.OUTPUT)) {
      throw new IllegalArgumentException(
          "a capture needs the output channel, found " + copy.keySet());
    }
    copy.forEach(
        (role, waveform) -> {
          if (waveform.length() != time.length()) {
            throw new IllegalArgumentException(
                "the "
                    + role
                    + " channel has "
                    + waveform.length()
                    + " samples, the time axis "
                    + time.length());
          }
        });
    waveforms = Collections.unmodifiableMap(copy);
  }

  /** A capture of the output alone. */
  public static Capture ofOutput(TimeAxis time, Waveform output) {
    return new Capture(time, Map.of(ChannelRole.OUTPUT, output));
  }

  /** The waveform of the unit's output. */
  public Waveform output() {
    Waveform output = waveforms.get(ChannelRole.OUTPUT);
    if (output == null) {
      throw new AssertionError("checked when the capture was made");
    }
    return output;
  }

  /**
   * The samples {@code from} (inclusive) to {@code to} (exclusive), at least one; their times stay
   * as they are.
   */
  public Capture part(int from, int to) {
    if (from == 0 && to == time.length()) {
      return this;
    }
    Map<ChannelRole, Waveform> parts = new EnumMap<>(ChannelRole.class);
    waveforms.forEach((role, waveform) -> parts.put(role, waveform.part(from, to)));
    TimeAxis rest =
        new TimeAxis(
            time.secondsAt(from),
            time.intervalSeconds(),
            to - from,
            time.timeBasePpm(),
            time.timeBaseAssumed());
    return new Capture(rest, parts);
  }

  /** The waveform of {@code role}, where it was watched. */
  public Optional<Waveform> waveform(ChannelRole role) {
    return Optional.ofNullable(waveforms.get(role));
  }
}
