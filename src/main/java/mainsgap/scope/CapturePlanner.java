package mainsgap.scope;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import mainsgap.scope.CapturePlan.ChannelPlan;
import mainsgap.scope.CapturePlan.TimeOutTrigger;
import mainsgap.signal.ChannelRole;
import org.jspecify.annotations.Nullable;

/** Makes a plan from what is to be caught and what the instrument can do, and says why. */
public final class CapturePlanner {
  /** An inverter's overshoot stays inside the range. */
  static final double HEADROOM = 1.5;

  private static final double TRIGGERED_INTERVAL_SECONDS = 5e-6;

  private final CaptureRequest request;
  private final ScopeLimits limits;
  private final CaptureTimes times;
  private final List<String> explanation = new ArrayList<>();

  private CapturePlanner(CaptureRequest request, ScopeLimits limits) {
    this.request = request;
    this.limits = limits;
    this.times = new CaptureTimes(request);
  }

  /**
   * Plans the capture.
   *
   * @throws ScopeException with a sentence if the instrument cannot catch what is asked for
   */
  public static CapturePlan plan(CaptureRequest request, ScopeLimits limits) {
    return new CapturePlanner(request, limits).plan();
  }

  private CapturePlan plan() {
    CatchMethod method = method();
    Map<ChannelRole, ChannelPlan> channels = channels();
    return method == CatchMethod.TIME_OUT_TRIGGER ? triggered(channels) : forced(channels);
  }

  private CatchMethod method() {
    CatchMethod wished = request.wishedMethod();
    boolean loss = request.change() == SupplyChange.LOSS;
    if (wished != null) {
      checkOffered(wished);
      return wished;
    }
    boolean sure =
        loss
            && request.inputs().containsKey(ChannelRole.MAINS)
            && limits.methods().contains(CatchMethod.TIME_OUT_TRIGGER);
    return sure ? CatchMethod.TIME_OUT_TRIGGER : CatchMethod.FORCED_RECORD;
  }

  private void checkOffered(CatchMethod wished) {
    if (!limits.methods().contains(wished)) {
      throw new ScopeException(
          "this instrument has no time-out trigger in its profile: catch the "
              + changeWord()
              + " by a forced record");
    }
    if (wished == CatchMethod.TIME_OUT_TRIGGER && request.change() == SupplyChange.RESTORATION) {
      throw new ScopeException(
          "a time-out trigger cannot see mains come back, as the output is fed before and after:"
              + " catch the restoration by a forced record");
    }
  }

  private Map<ChannelRole, ChannelPlan> channels() {
    Map<ChannelRole, ChannelPlan> channels = new EnumMap<>(ChannelRole.class);
    Map<Integer, ChannelRole> taken = new HashMap<>();
    request
        .inputs()
        .forEach(
            (role, input) -> {
              ChannelRole other = taken.putIfAbsent(input.channel(), role);
              if (other != null) {
                throw new ScopeException(
                    "channel "
                        + input.channel()
                        + " is both "
                        + Words.of(other)
                        + " and "
                        + Words.of(role)
                        + ": give each its own channel");
              }
              channels.put(role, channel(role, input));
            });
    return channels;
  }

  private ChannelPlan channel(ChannelRole role, CaptureRequest.Input input) {
    if (input.channel() > limits.channels()) {
      throw new ScopeException(
          Words.of(role)
              + " is on channel "
              + input.channel()
              + ", but the instrument has "
              + limits.channels()
              + " channels: choose one of them");
    }
    double peak = expectedPeakVolts(role, input);
    double largest = limits.largestFullScalePeakVolts() * input.probeFactor();
    double smallest = limits.smallestFullScalePeakVolts() * input.probeFactor();
    double fullScale = Math.max(smallest, Math.min(largest, Steps.upTwoDigits(HEADROOM * peak)));
    if (fullScale < HEADROOM * peak) {
      throw new ScopeException(tooSmall(input, peak, largest));
    }
    explanation.add(
        String.format(
            "Channel %d (%s, probe factor %s): range ±%s, at least %s times the %s peak, so that an"
                + " overshoot is seen.",
            input.channel(),
            Words.of(role),
            Words.plain(input.probeFactor(), 4),
            Words.volts(fullScale),
            Words.plain(HEADROOM, 2),
            Words.volts(peak)));
    return new ChannelPlan(input.channel(), input.probeFactor(), fullScale, peak);
  }

  private double expectedPeakVolts(ChannelRole role, CaptureRequest.Input input) {
    Double expected = input.expectedPeakVolts();
    if (expected != null) {
      return expected;
    }
    if (role == ChannelRole.LOAD_CURRENT || role == ChannelRole.MARKER) {
      throw new ScopeException(
          "channel "
              + input.channel()
              + " ("
              + Words.of(role)
              + ") does not see the supply: say which peak voltage it sees");
    }
    return request.nominalPeakVolts();
  }

  private String tooSmall(CaptureRequest.Input input, double peak, double largest) {
    double factor = Steps.upTwoDigits(HEADROOM * peak / limits.largestFullScalePeakVolts());
    return "channel "
        + input.channel()
        + " reaches ±"
        + Words.volts(largest)
        + " with a probe factor of "
        + Words.plain(input.probeFactor(), 4)
        + ", below "
        + Words.plain(HEADROOM, 2)
        + " times the "
        + Words.volts(peak)
        + " peak: use a probe rated for this voltage with a factor of "
        + Words.plain(factor, 4)
        + " or more";
  }

  private CapturePlan triggered(Map<ChannelRole, ChannelPlan> channels) {
    ChannelRole source =
        channels.containsKey(ChannelRole.MAINS) ? ChannelRole.MAINS : ChannelRole.OUTPUT;
    ChannelPlan watched = channels.get(source);
    double peak = watched == null ? request.nominalPeakVolts() : watched.expectedPeakVolts();
    TimeOutTrigger trigger =
        new TimeOutTrigger(source, CaptureTimes.LEVEL_OF_PEAK * peak, times.timeOutSeconds());
    double before = trigger.timeSeconds() + times.beforeSeconds();
    RecordSize size = triggeredSize(before + times.afterSeconds());
    explainTrigger(trigger);
    explanation.add(
        String.format(
            "Record %s at %s (%d samples): %s before the trigger, then room for a transfer of %s"
                + " and 10/12 cycles of the settled supply (the window of IEC 61000-4-7)%s.",
            Words.of(size.durationSeconds(), "s"),
            Words.of(1 / size.intervalSeconds(), "S/s"),
            size.samples(),
            Words.of(before, "s"),
            Words.of(times.longestTransferSeconds(), "s"),
            assumption()));
    return new CapturePlan(
        CatchMethod.TIME_OUT_TRIGGER,
        channels,
        size.intervalSeconds(),
        size.samples(),
        before,
        trigger,
        explanation);
  }

  private RecordSize triggeredSize(double neededSeconds) {
    return orRefuse(
        RecordSize.fitting(
            Steps.up125(neededSeconds),
            TRIGGERED_INTERVAL_SECONDS,
            RecordSize.COARSEST_SECONDS,
            limits),
        neededSeconds);
  }

  private CapturePlan forced(Map<ChannelRole, ChannelPlan> channels) {
    ForcedRecord record = ForcedRecord.of(request, times);
    RecordSize size = orRefuse(record.size(limits), record.leastSeconds());
    explanation.add(
        "One forced record, started at once: the "
            + changeWord()
            + " happens while it runs and is found in it afterwards, so no trigger can miss it"
            + " (a unit without a gap is seen only in this way, or on a mains channel).");
    explanation.add(
        String.format(
            "Record %s at %s (%d samples): %s, with a transfer of up to %s and 10/12 cycles of the"
                + " settled supply (the window of IEC 61000-4-7) around it%s.",
            Words.of(size.durationSeconds(), "s"),
            Words.of(1 / size.intervalSeconds(), "S/s"),
            size.samples(),
            record.reason(),
            Words.of(times.longestTransferSeconds(), "s"),
            assumption()));
    return new CapturePlan(
        CatchMethod.FORCED_RECORD,
        channels,
        size.intervalSeconds(),
        size.samples(),
        0,
        null,
        explanation);
  }

  private void explainTrigger(TimeOutTrigger trigger) {
    explanation.add(
        String.format(
            "Time-out trigger on the %s: no crossing of %s (%s %% of the peak) for %s; a healthy"
                + " sine is quiet for %s at most.",
            Words.of(trigger.source()),
            Words.volts(trigger.levelVolts()),
            Words.plain(100 * CaptureTimes.LEVEL_OF_PEAK, 3),
            Words.of(trigger.timeSeconds(), "s"),
            Words.of(times.quietPartSeconds(), "s")));
    explanation.add(
        trigger.source() == ChannelRole.MAINS
            ? "It watches the mains downstream of the switch, which stays dead after an opening:"
                + " even a unit without a gap is caught."
            : "It watches the output: a gap shorter than "
                + Words.of(trigger.timeSeconds(), "s")
                + " may pass unseen, and a unit without a gap never fires it; the forced record or a"
                + " mains channel has no such blind zone.");
  }

  private RecordSize orRefuse(@Nullable RecordSize size, double neededSeconds) {
    if (size == null) {
      throw new ScopeException(
          String.format(
              "a record of %s needs %.0f samples at %s, but the instrument holds %d samples of at"
                  + " most %s each: use an instrument with more memory, or declare a shorter"
                  + " rated time",
              Words.of(neededSeconds, "s"),
              Math.ceil(neededSeconds / RecordSize.COARSEST_SECONDS),
              Words.of(1 / RecordSize.COARSEST_SECONDS, "S/s"),
              limits.largestRecord(),
              Words.of(limits.longestIntervalSeconds(), "s")));
    }
    return size;
  }

  private String assumption() {
    return request.ratedSeconds() == null
        ? "; no transfer time is declared, so one of "
            + Words.of(times.ratedSeconds(), "s")
            + " is assumed"
        : "";
  }

  private String changeWord() {
    return request.change() == SupplyChange.LOSS ? "loss" : "restoration";
  }
}
