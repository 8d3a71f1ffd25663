package mainsgap.scope;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import mainsgap.signal.ChannelRole;
import org.jspecify.annotations.Nullable;

/**
 * Settings for one capture, as data: it can be read, checked and explained before anything is sent.
 *
 * @param method how the event gets into the record
 * @param channels the channel for each role, the output always among them
 * @param intervalSeconds the sample interval
 * @param samples the record length
 * @param preTriggerSeconds what the record holds before the trigger; 0 for a forced record
 * @param trigger what the instrument waits for; null where it waits for nothing, and only then
 * @param unitWaitSeconds what the unit may take between the move of the switch and the trigger,
 *     beyond the time for the hand
 * @param blindness what it cannot see
 * @param explanation what was chosen and why, one sentence each
 */
public record CapturePlan(
    CatchMethod method,
    Map<ChannelRole, ChannelPlan> channels,
    double intervalSeconds,
    int samples,
    double preTriggerSeconds,
    @Nullable PlannedTrigger trigger,
    double unitWaitSeconds,
    Blindness blindness,
    List<String> explanation) {

  /** One for a trigger that comes with the switch, and misses nothing. */
  public CapturePlan(
      CatchMethod method,
      Map<ChannelRole, ChannelPlan> channels,
      double intervalSeconds,
      int samples,
      double preTriggerSeconds,
      @Nullable PlannedTrigger trigger,
      List<String> explanation) {
    this(
        method,
        channels,
        intervalSeconds,
        samples,
        preTriggerSeconds,
        trigger,
        0,
        Blindness.NONE,
        explanation);
  }

  /**
   * One channel's settings.
   *
   * @param number the instrument's channel, from 1
   * @param probeFactor volts at the tip for each volt at the input, such as 100
   * @param fullScalePeakVolts the range's reach from its middle in volts at the tip
   * @param expectedPeakVolts what the channel should be able to show, in volts at the tip
   */
  public record ChannelPlan(
      int number, double probeFactor, double fullScalePeakVolts, double expectedPeakVolts) {}

  /** Takes its own copies. */
  public CapturePlan {
    EnumMap<ChannelRole, ChannelPlan> copy = new EnumMap<>(ChannelRole.class);
    copy.putAll(channels);
    if (!copy.containsKey(ChannelRole.OUTPUT)) {
      throw new IllegalArgumentException("a plan needs the output channel, found " + copy.keySet());
    }
    if (trigger == null ? method.isTriggered() : trigger.method() != method) {
      throw new IllegalArgumentException("a plan by " + method + " has the trigger " + trigger);
    }
    channels = Collections.unmodifiableMap(copy);
    explanation = List.copyOf(explanation);
  }

  /** The whole record in seconds. */
  public double durationSeconds() {
    return samples * intervalSeconds;
  }

  /** The channel for {@code role}, which the plan has. */
  ChannelPlan channel(ChannelRole role) {
    ChannelPlan channel = channels.get(role);
    if (channel == null) {
      throw new IllegalArgumentException("the plan has no channel for " + role);
    }
    return channel;
  }
}
