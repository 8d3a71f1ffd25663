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
 * @param intervalSeconds the sample interval, instead of a time column; above 0
 * @param scale multiplies the voltages of the file, such as a probe factor that they lack; not 0
 */
public record CaptureFileOptions(
    @Nullable String timeColumn,
    Map<ChannelRole, String> columns,
    @Nullable Double intervalSeconds,
    double scale) {

  /** Everything is found in the file. */
  public static final CaptureFileOptions NONE = new CaptureFileOptions(null, Map.of(), null, 1);

  /** Checks the numbers and takes its own copy. */
  public CaptureFileOptions {
    columns = Map.copyOf(columns);
    if (intervalSeconds != null && !(intervalSeconds > 0 && Double.isFinite(intervalSeconds))) {
      throw new IllegalArgumentException(
          "a sample interval is above 0 s, found " + intervalSeconds + " s");
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
