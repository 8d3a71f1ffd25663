package mainsgap.scope;

import java.util.EnumMap;
import java.util.Map;
import mainsgap.scope.CapturePlan.ChannelPlan;
import mainsgap.scope.InstrumentProfile.Conventions;

/** What goes into a profile's templates: a plan in the instrument's own way of counting. */
final class TemplateValues {
  /** The supply peaks at two thirds of the range, by the planner's headroom. */
  private static final double UNREACHED_PART_OF_RANGE = 0.95;

  private final Conventions conventions;

  TemplateValues(Conventions conventions) {
    this.conventions = conventions;
  }

  static Map<Placeholder, Double> channel(int number) {
    return new EnumMap<>(Map.of(Placeholder.CHANNEL, (double) number));
  }

  static Map<Placeholder, Double> part(int channel, int first, int last) {
    Map<Placeholder, Double> values = channel(channel);
    values.put(Placeholder.FIRST, (double) first);
    values.put(Placeholder.LAST, (double) last);
    return values;
  }

  Map<Placeholder, Double> vertical(ChannelPlan plan) {
    double peak = counted(plan.fullScalePeakVolts(), plan);
    Map<Placeholder, Double> values = channel(plan.number());
    values.put(Placeholder.PROBE_FACTOR, plan.probeFactor());
    values.put(Placeholder.PEAK_VOLTS, peak);
    values.put(Placeholder.PEAK_TO_PEAK_VOLTS, 2 * peak);
    if (conventions.verticalDivisions() > 0) {
      values.put(Placeholder.VOLTS_PER_DIVISION, 2 * peak / conventions.verticalDivisions());
    }
    return values;
  }

  Map<Placeholder, Double> horizontal(AppliedRecord record) {
    double duration = record.durationSeconds();
    Map<Placeholder, Double> values = new EnumMap<>(Placeholder.class);
    values.put(Placeholder.SAMPLES, (double) record.samples());
    values.put(Placeholder.INTERVAL_SECONDS, record.intervalSeconds());
    values.put(Placeholder.SAMPLE_RATE_HERTZ, 1 / record.intervalSeconds());
    values.put(Placeholder.DURATION_SECONDS, duration);
    values.put(Placeholder.FIRST_SAMPLE_SECONDS, record.firstSampleSeconds());
    values.put(Placeholder.CENTRE_SECONDS, record.firstSampleSeconds() + duration / 2);
    values.put(Placeholder.PRE_TRIGGER_FRACTION, -record.firstSampleSeconds() / duration);
    values.put(Placeholder.PRE_TRIGGER_PERCENT, -100 * record.firstSampleSeconds() / duration);
    if (conventions.horizontalDivisions() > 0) {
      values.put(Placeholder.SECONDS_PER_DIVISION, duration / conventions.horizontalDivisions());
    }
    return values;
  }

  /** For a trigger on a channel. */
  Map<Placeholder, Double> trigger(PlannedTrigger trigger, ChannelPlan source) {
    double level = counted(trigger.levelVolts(), source);
    Map<Placeholder, Double> values = channel(source.number());
    values.put(Placeholder.LEVEL_VOLTS, level);
    values.put(Placeholder.UPPER_LEVEL_VOLTS, level);
    values.put(Placeholder.LOWER_LEVEL_VOLTS, -level);
    values.put(Placeholder.TIME_OUT_SECONDS, trigger.timeSeconds());
    return values;
  }

  /** For the external trigger input, which knows of no probe. */
  static Map<Placeholder, Double> external(PlannedTrigger trigger) {
    return Map.of(Placeholder.LEVEL_VOLTS, trigger.levelVolts());
  }

  Map<Placeholder, Double> forced(ChannelPlan source) {
    Map<Placeholder, Double> values = channel(source.number());
    values.put(
        Placeholder.UNREACHED_LEVEL_VOLTS,
        UNREACHED_PART_OF_RANGE * counted(source.fullScalePeakVolts(), source));
    return values;
  }

  /** The range's reach in volts at the tip from what the instrument answered. */
  double fullScalePeakVolts(Placeholder quantity, double answer, ChannelPlan plan) {
    double peak =
        switch (quantity) {
          case PEAK_TO_PEAK_VOLTS -> answer / 2;
          case VOLTS_PER_DIVISION -> answer * conventions.verticalDivisions() / 2;
          default -> answer;
        };
    return conventions.probeFactorTold() ? peak : peak * plan.probeFactor();
  }

  private double counted(double tipVolts, ChannelPlan plan) {
    return conventions.probeFactorTold() ? tipVolts : tipVolts / plan.probeFactor();
  }
}
