package mainsgap.simulation;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One acquisition as the scope was told to make it.
 *
 * @param firstSampleSeconds of the record, the trigger at 0 s
 * @param intervalSeconds of the samples
 * @param points of the record
 * @param trigger what it waits for; null where it starts at once
 * @param ranges of the channels, from channel 1
 */
record RecordPlan(
    double firstSampleSeconds,
    double intervalSeconds,
    int points,
    @Nullable Trigger trigger,
    List<VoltageRange> ranges) {

  RecordPlan {
    ranges = List.copyOf(ranges);
  }

  double durationSeconds() {
    return points * intervalSeconds;
  }

  /** What the record holds before the trigger. */
  double preTriggerSeconds() {
    return Math.max(0, -firstSampleSeconds);
  }

  /** What the record holds after the trigger. */
  double postTriggerSeconds() {
    return Math.max(0, firstSampleSeconds + durationSeconds());
  }
}
