package mainsgap.desk.trace;

import mainsgap.signal.Envelope;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.Waveform;

/**
 * One recorded voltage in a picture.
 *
 * @param name what it is, in a few words for the legend, such as "output" or "trial 7"
 * @param time its own time axis
 * @param envelope its samples
 * @param zeroSeconds where the zero of the picture lies on its own time axis: its loss
 */
public record Trace(String name, TimeAxis time, Envelope envelope, double zeroSeconds) {

  /** Checks that the samples fit the axis. */
  public Trace {
    if (time.length() != envelope.length()) {
      throw new IllegalArgumentException(
          "the trace "
              + name
              + " has "
              + envelope.length()
              + " samples, its time axis "
              + time.length());
    }
    if (!Double.isFinite(zeroSeconds)) {
      throw new IllegalArgumentException("the zero of the trace " + name + " is no instant");
    }
  }

  /** Reads all samples once: some milliseconds for a million, so not on the UI thread. */
  public static Trace of(String name, TimeAxis time, Waveform waveform, double zeroSeconds) {
    return new Trace(name, time, Envelope.of(waveform), zeroSeconds);
  }

  /** From its first sample to its last one; one interval where there is a single sample. */
  public TimeSpan span() {
    double from = time.firstSampleSeconds() - zeroSeconds;
    return new TimeSpan(from, from + Math.max(time.durationSeconds(), time.intervalSeconds()));
  }

  /** The place of an instant of the picture among the samples, a fraction between two of them. */
  double indexAt(double seconds) {
    return time.indexAt(seconds + zeroSeconds);
  }

  /** What the line through the samples shows at {@code index}; NaN beyond its ends. */
  double voltsAt(double index) {
    int before = (int) Math.floor(index);
    if (index < 0 || index > envelope.length() - 1) {
      return Double.NaN;
    }
    double volts = envelope.voltsAt(before);
    return index == before
        ? volts
        : volts + (envelope.voltsAt(before + 1) - volts) * (index - before);
  }
}
