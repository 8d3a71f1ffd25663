package mainsgap.bench;

import java.util.Locale;
import mainsgap.arming.LiveSignal;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.Waveform;
import org.jspecify.annotations.Nullable;

/**
 * What a channel of a tried capture shows.
 *
 * @param role what the rig calls it
 * @param samples how many came
 * @param durationSeconds of the record
 * @param rmsVolts over whole cycles where there are any
 * @param lowestVolts the lowest sample
 * @param highestVolts the highest sample
 * @param frequencyHertz null where there is no whole cycle
 * @param clippedPercent of the samples
 */
public record SeenChannel(
    String role,
    int samples,
    double durationSeconds,
    double rmsVolts,
    double lowestVolts,
    double highestVolts,
    @Nullable Double frequencyHertz,
    double clippedPercent) {

  static SeenChannel of(ChannelRole role, Capture capture) {
    Waveform waveform = capture.waveform(role).orElseThrow();
    LiveSignal signal = LiveSignal.of(waveform, capture.time());
    double lowest = Double.POSITIVE_INFINITY;
    double highest = Double.NEGATIVE_INFINITY;
    for (double volts : waveform.volts()) {
      lowest = Math.min(lowest, volts);
      highest = Math.max(highest, volts);
    }
    return new SeenChannel(
        role.words(),
        waveform.length(),
        capture.time().durationSeconds(),
        signal.rmsVolts(),
        lowest,
        highest,
        signal.frequencyHertz(),
        signal.clippedPercent());
  }

  /** The figures in a sentence. */
  public String sentence() {
    return String.format(
        Locale.ROOT,
        "%d samples in %.3g s, %.4g V to %.4g V, %.4g V RMS%s%s",
        samples,
        durationSeconds,
        lowestVolts,
        highestVolts,
        rmsVolts,
        frequencyHertz == null
            ? ", no whole cycle"
            : String.format(Locale.ROOT, ", %.2f Hz", frequencyHertz),
        clippedPercent > 0
            ? String.format(Locale.ROOT, ", %.1f %% of the samples clipped", clippedPercent)
            : "");
  }
}
