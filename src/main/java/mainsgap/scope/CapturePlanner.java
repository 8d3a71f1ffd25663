package mainsgap.scope;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import mainsgap.scope.CapturePlan.ChannelPlan;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.Event;
import org.jspecify.annotations.Nullable;

/** Makes a plan from what is to be caught and what the instrument can do, and says why. */
public final class CapturePlanner {
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
    ChannelPlanner planner = new ChannelPlanner(request, limits);
    Map<ChannelRole, ChannelPlan> channels = planner.channels();
    return method == CatchMethod.TIME_OUT_TRIGGER
        ? triggered(channels, planner.explanation())
        : forced(channels, planner.explanation());
  }

  private CatchMethod method() {
    CatchMethod wished = request.wishedMethod();
    boolean loss = request.event() == Event.LOSS;
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
              + request.event().word()
              + " by a forced record");
    }
    if (wished == CatchMethod.TIME_OUT_TRIGGER && request.event() == Event.RESTORATION) {
      throw new ScopeException(
          "a time-out trigger cannot see mains come back, as the output is fed before and after:"
              + " catch the restoration by a forced record");
    }
  }

  private CapturePlan triggered(Map<ChannelRole, ChannelPlan> channels, List<String> ofChannels) {
    ChannelRole source =
        channels.containsKey(ChannelRole.MAINS) ? ChannelRole.MAINS : ChannelRole.OUTPUT;
    ChannelPlan watched = channels.get(source);
    double peak = watched == null ? request.nominalPeakVolts() : watched.expectedPeakVolts();
    PlannedTrigger trigger =
        PlannedTrigger.quiet(
            CatchMethod.TIME_OUT_TRIGGER,
            source,
            CaptureTimes.LEVEL_OF_PEAK * peak,
            times.timeOutSeconds());
    double before = trigger.timeSeconds() + times.beforeSeconds();
    RecordSize size = triggeredSize(before + times.afterSeconds());
    explainTrigger(trigger, source);
    explanation.addAll(ofChannels);
    explanation.add(
        String.format(
            Locale.ROOT,
            "Record %s at %s (%d samples): %s before the trigger, for its own time and 10/12 cycles of"
                + " the supply before (the window of IEC 61000-4-7), then room for a transfer of %s"
                + " and 10/12 cycles of the settled supply after%s.",
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
            RoundValues.up125(neededSeconds),
            TRIGGERED_INTERVAL_SECONDS,
            RecordSize.COARSEST_SECONDS,
            limits),
        neededSeconds);
  }

  private CapturePlan forced(Map<ChannelRole, ChannelPlan> channels, List<String> ofChannels) {
    ForcedRecord record = ForcedRecord.of(request, times);
    RecordSize size = orRefuse(record.size(limits), record.leastSeconds());
    explanation.add(
        "One forced record, started at once: the "
            + request.event().word()
            + " happens while it runs and is found in it afterwards, so no trigger can miss it"
            + " (a unit without a gap is seen only in this way, or on a mains channel).");
    explanation.addAll(ofChannels);
    explanation.add(
        String.format(
            Locale.ROOT,
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

  private void explainTrigger(PlannedTrigger trigger, ChannelRole source) {
    explanation.add(
        String.format(
            Locale.ROOT,
            "Time-out trigger on the %s: no crossing of %s (%s %% of the peak) for %s; a healthy"
                + " sine is quiet for %s at most.",
            source.words(),
            Words.volts(trigger.levelVolts()),
            Words.plain(100 * CaptureTimes.LEVEL_OF_PEAK, 3),
            Words.of(trigger.timeSeconds(), "s"),
            Words.of(times.quietPartSeconds(), "s")));
    explanation.add(
        source == ChannelRole.MAINS
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
              Locale.ROOT,
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
}
