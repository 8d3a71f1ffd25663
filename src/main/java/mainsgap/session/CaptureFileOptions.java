package mainsgap.session;

import java.util.Map;
import mainsgap.signal.ChannelRole;
import org.jspecify.annotations.Nullable;

/**
 * What the user says of a capture file; null where the file is to tell. A column is named as its
 * header names it, or by its number from 1.
 *
 * @param timeColumn the times
 * @param columns by what they hold; what is not named is not read, but for the output voltage
 * @param intervalSeconds the sample interval; a time column may not contradict it; above 0
 * @param timeBasePpm the stated accuracy of the time base; at least 0
 * @param scale multiplies the voltages of the file, such as a probe factor that they lack; not 0
 */
public record CaptureFileOptions(
    @Nullable String timeColumn,
    Map<ChannelRole, String> columns,
    @Nullable Double intervalSeconds,
    @Nullable Double timeBasePpm,
    double scale) {

  /** Everything is found in the file. */
  public static final CaptureFileOptions NONE =
      new CaptureFileOptions(null, Map.of(), null, null, 1);

  /** A clock worse than this measures nothing here. */
  private static final double MOST_PPM = 10_000;

  /** Checks the numbers and takes its own copy. */
  public CaptureFileOptions {
    columns = Map.copyOf(columns);
    if (intervalSeconds != null && !(intervalSeconds > 0 && Double.isFinite(intervalSeconds))) {
      throw new IllegalArgumentException(
          "a sample interval is above 0 s, found " + intervalSeconds + " s");
    }
    if (timeBasePpm != null && !(timeBasePpm >= 0 && timeBasePpm <= MOST_PPM)) {
      throw new IllegalArgumentException(
          "the accuracy of a time base is 0 to 10000 ppm, found " + timeBasePpm);
    }
    if (!Double.isFinite(scale) || scale == 0) {
      throw new IllegalArgumentException("a scale is a number other than 0, found " + scale);
    }
    if (timeColumn != null && intervalSeconds != null) {
      throw new IllegalArgumentException(
          "a time column and an interval exclude each other; give one of them");
    }
  }
}
