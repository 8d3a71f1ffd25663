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
    return switch (method) {
      case FORCED_RECORD -> forced(channels, planner.explanation());
      case BACK_TO_BACK_RECORDS -> backToBack(channels, planner.explanation());
      case TIME_OUT_TRIGGER,
          DROPOUT_TRIGGER,
          PULSE_WIDTH_TRIGGER,
          INTERVAL_TRIGGER,
          WINDOW_TRIGGER,
          EDGE_TRIGGER,
          EXTERNAL_TRIGGER ->
          triggered(method, channels, planner.explanation());
    };
  }

  private CatchMethod method() {
    CatchMethod wished = request.wishedMethod();
    if (wished == null) {
      return new CatchChoice(request, limits, times).method();
    }
    if (!limits.methods().contains(wished)) {
      throw new ScopeException(
          "this instrument has no "
              + wished.words()
              + (wished.awaitsQuiet() && wished != CatchMethod.TIME_OUT_TRIGGER
                  ? " that fires by itself"
                  : "")
              + " in its profile: catch the "
              + request.event().word()
              + " by a forced record");
    }
    return wished;
  }

  private CapturePlan triggered(
      CatchMethod method, Map<ChannelRole, ChannelPlan> channels, List<String> ofChannels) {
    TriggerPlan trigger = new TriggerPlanner(request, times).plan(method);
    RecordSize size =
        orRefuse(
            trigger.size(RecordSize.COARSEST_SECONDS, limits),
            RoundValues.up125(trigger.neededSeconds()));
    explanation.addAll(trigger.explanation());
    explanation.addAll(ofChannels);
    explanation.add(
        String.format(
            Locale.ROOT,
            "Record %s: %s before the trigger, for its own time and 10/12 cycles of the supply before"
                + " (the window of IEC 61000-4-7), then room for a transfer of %s and 10/12 cycles of"
                + " the settled supply after%s.",
            sizeWords(size),
            Words.of(trigger.beforeSeconds(), "s"),
            Words.of(times.longestTransferSeconds(), "s"),
            assumption()));
    return new CapturePlan(
        method,
        channels,
        size.intervalSeconds(),
        size.samples(),
        trigger.beforeSeconds(),
        trigger.trigger(),
        trigger.unitWaitSeconds(),
        trigger.blindness(),
        explanation);
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
            "Record %s: %s, with a transfer of up to %s and 10/12 cycles of the settled supply (the"
                + " window of IEC 61000-4-7) around it%s.",
            sizeWords(size),
            record.reason(),
            Words.of(times.longestTransferSeconds(), "s"),
            assumption()));
    return untriggered(CatchMethod.FORCED_RECORD, channels, size, Blindness.NONE);
  }

  private CapturePlan backToBack(Map<ChannelRole, ChannelPlan> channels, List<String> ofChannels) {
    BackToBackRecords records = BackToBackRecords.of(times, limits);
    double needed = RoundValues.up125(times.beforeSeconds() + times.afterSeconds());
    RecordSize size = orRefuse(records == null ? null : records.size(), needed);
    double blind = records == null ? 1 : records.blindPart();
    explanation.add(
        String.format(
            Locale.ROOT,
            "Records back to back, each looked through for the %s, as the last resort: blind for at"
                + " least %s %% of the time, at the ends of the records, and while each is read and"
                + " the next is started; a %s that falls there is missed, and the switch must move"
                + " again.",
            request.event().word(),
            Words.plain(100 * blind, 2),
            request.event().word()));
    explanation.addAll(ofChannels);
    explanation.add("Record " + sizeWords(size) + ", again and again" + assumption() + ".");
    return untriggered(CatchMethod.BACK_TO_BACK_RECORDS, channels, size, Blindness.ofTime(blind));
  }

  private CapturePlan untriggered(
      CatchMethod method,
      Map<ChannelRole, ChannelPlan> channels,
      RecordSize size,
      Blindness blindness) {
    boolean ends = method == CatchMethod.FORCED_RECORD;
    return new CapturePlan(
        method,
        channels,
        size.intervalSeconds(),
        size.samples(),
        0,
        null,
        ends ? 0 : times.unitWaitSeconds(),
        blindness,
        explanation);
  }

  private RecordSize orRefuse(@Nullable RecordSize size, double neededSeconds) {
    if (size == null) {
      throw new ScopeException(
          String.format(
              Locale.ROOT,
              "a record of %s needs %.0f samples at %s, but the instrument holds %d samples of at"
                  + " most %s each: use an instrument with more memory, or %s",
              Words.of(neededSeconds, "s"),
              Math.ceil(neededSeconds / RecordSize.COARSEST_SECONDS),
              Words.of(1 / RecordSize.COARSEST_SECONDS, "S/s"),
              limits.largestRecord(),
              Words.of(limits.longestIntervalSeconds(), "s"),
              request.event() == Event.RESTORATION
                  ? "say how long the unit checks the mains, if less than the "
                      + Words.of(times.unitWaitSeconds(), "s")
                      + " that are allowed for, or catch the restoration by a trigger on the output"
                  : "declare a shorter rated time"));
    }
    return size;
  }

  private static String sizeWords(RecordSize size) {
    return String.format(
        Locale.ROOT,
        "%s at %s (%d samples)",
        Words.of(size.durationSeconds(), "s"),
        Words.of(1 / size.intervalSeconds(), "S/s"),
        size.samples());
  }

  private String assumption() {
    return request.ratedSeconds() == null
        ? "; no transfer time is declared, so one of "
            + Words.of(times.ratedSeconds(), "s")
            + " is assumed"
        : "";
  }
}
