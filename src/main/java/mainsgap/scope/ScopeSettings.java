package mainsgap.scope;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import mainsgap.scope.CapturePlan.ChannelPlan;
import mainsgap.signal.ChannelRole;

/** Sends settings and reads back what the instrument made of them. */
final class ScopeSettings {
  /** A range that comes back rounded is still the one that was asked for. */
  private static final double HAIR = 0.005;

  private final Exchange exchange;
  private final InstrumentProfile profile;
  private final TemplateValues values;

  ScopeSettings(Exchange exchange, InstrumentProfile profile) {
    this.exchange = exchange;
    this.profile = profile;
    this.values = new TemplateValues(profile.conventions());
  }

  void sendChannels(CapturePlan plan) {
    Set<Integer> used =
        plan.channels().values().stream().map(ChannelPlan::number).collect(Collectors.toSet());
    for (int number = 1; number <= profile.limits().channels(); number++) {
      if (!used.contains(number)) {
        exchange.send(
            "switching off channel " + number,
            profile.commands().channelOff(),
            TemplateValues.channel(number));
      }
    }
    for (ChannelPlan channel : plan.channels().values()) {
      exchange.send(
          "setting channel " + channel.number(),
          profile.commands().channelOn(),
          values.vertical(channel));
    }
  }

  /** The ranges as the instrument has set them, in volts at the tip. */
  Map<ChannelRole, Double> rangesPeakVolts(CapturePlan plan) {
    Map<ChannelRole, Double> ranges = new EnumMap<>(ChannelRole.class);
    plan.channels().forEach((role, channel) -> ranges.put(role, rangePeakVolts(channel)));
    return ranges;
  }

  /** What is nearest to {@code wished} of the records on offer, and not shorter. */
  AppliedRecord offered(AppliedRecord wished) {
    return profile
        .conventions()
        .steps()
        .fitting(wished, profile.conventions().horizontalDivisions());
  }

  void sendRecord(AppliedRecord wished) {
    exchange.send("setting the record", profile.commands().record(), values.horizontal(wished));
  }

  void sendTrigger(CapturePlan plan) {
    PlannedTrigger trigger = plan.trigger();
    if (trigger == null) {
      sendForcedTrigger(plan);
      return;
    }
    ChannelRole source = trigger.source();
    exchange.send(
        "setting the " + trigger.method().words(),
        profile.triggers().setting(trigger),
        source == null
            ? TemplateValues.external(trigger)
            : values.trigger(trigger, plan.channel(source)));
  }

  void sendForcedTrigger(CapturePlan plan) {
    exchange.send(
        "setting the trigger for a forced record",
        profile.triggers().forced(),
        values.forced(plan.channel(ChannelRole.OUTPUT)));
  }

  /** The record as the instrument has set it, or the wished one where it cannot be asked. */
  AppliedRecord readRecord(AppliedRecord wished) {
    double samples = answer(profile.readBacks().samples()).orElse((double) wished.samples());
    if (!(samples >= 1 && samples <= Integer.MAX_VALUE)) {
      throw new ScopeException(
          "the instrument says that its record has "
              + samples
              + " samples, where "
              + wished.samples()
              + " were set: check that the profile fits the instrument");
    }
    double interval = answer(profile.readBacks().interval()).orElse(wished.intervalSeconds());
    if (!(interval > 0) || Double.isInfinite(interval)) {
      throw new ScopeException(
          "the instrument says that its sample interval is "
              + interval
              + " s, where "
              + wished.intervalSeconds()
              + " s were set: check that the profile fits the instrument");
    }
    return new AppliedRecord(interval, (int) samples, wished.firstSampleSeconds())
        .checkedAgainst(wished);
  }

  private Optional<Double> answer(Optional<ReadBack> readBack) {
    return readBack.map(
        asked -> {
          double answer = exchange.askNumber("reading back the record", asked.query(), Map.of());
          return asked.gives() == Placeholder.SAMPLE_RATE_HERTZ ? 1 / answer : answer;
        });
  }

  private double rangePeakVolts(ChannelPlan channel) {
    Optional<ReadBack> readBack = profile.readBacks().range();
    if (readBack.isEmpty()) {
      return channel.fullScalePeakVolts();
    }
    double answer =
        exchange.askNumber(
            "reading back the range of channel " + channel.number(),
            readBack.get().query(),
            TemplateValues.channel(channel.number()));
    double peak = values.fullScalePeakVolts(readBack.get().gives(), answer, channel);
    checkRange(channel, peak);
    return peak;
  }

  private static void checkRange(ChannelPlan channel, double peakVolts) {
    if (Double.isInfinite(peakVolts)) {
      throw new ScopeException(
          "the instrument says that the range of channel "
              + channel.number()
              + " is "
              + peakVolts
              + " V, where "
              + Words.volts(channel.fullScalePeakVolts())
              + " were set: check that the profile fits the instrument");
    }
    double needed = ChannelPlanner.HEADROOM * channel.expectedPeakVolts();
    if (peakVolts >= needed * (1 - HAIR)) {
      return;
    }
    String times =
        peakVolts < channel.expectedPeakVolts()
            ? ""
            : Words.plain(ChannelPlanner.HEADROOM, 2) + " times ";
    throw new ScopeException(
        "channel "
            + channel.number()
            + " range "
            + Words.volts(peakVolts)
            + " is below "
            + times
            + "the "
            + Words.volts(channel.expectedPeakVolts())
            + " supply peak: choose "
            + Words.volts(RoundValues.upTwoDigits(needed))
            + " or more");
  }
}
