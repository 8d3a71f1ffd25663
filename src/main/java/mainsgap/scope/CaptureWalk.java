package mainsgap.scope;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Consumer;
import mainsgap.link.LinkException;
import mainsgap.scope.CapturePlan.ChannelPlan;
import mainsgap.scope.CaptureRequest.Input;
import mainsgap.scpi.Identity;
import mainsgap.scpi.ScpiException;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.Event;
import mainsgap.waiting.Deadline;
import org.jspecify.annotations.Nullable;

/**
 * Walks once through a whole capture and explains each message: a short forced record of whatever
 * is connected. The instrument is armed and disarmed again; nothing else moves.
 */
public final class CaptureWalk {
  /** Beyond the record's own duration: instruments copy and settle. */
  private static final Duration PATIENCE = Duration.ofSeconds(10);

  /** With an unknown signal the range is near the largest; it must not be rounded beyond it. */
  private static final double PART_OF_LARGEST = 0.9;

  private final InstrumentAccess access;
  private final InstrumentProfile profile;
  private final WalkWords words;
  private final Consumer<WalkStep> listener;

  /** What was sent and is not told yet: the meaning of a state is known one call later. */
  private final List<WalkStep> pending = new ArrayList<>();

  private CaptureWalk(
      InstrumentAccess access, InstrumentProfile profile, Consumer<WalkStep> listener) {
    this.access = access;
    this.profile = profile;
    this.words = new WalkWords(profile);
    this.listener = listener;
  }

  /**
   * What is connected, as far as it is known.
   *
   * @param inputs the channel for each role that is watched, the output among them
   * @param nominalVolts RMS
   */
  public record Connected(Map<ChannelRole, Input> inputs, double nominalVolts) {}

  /** The end of a walk: who the instrument is, and what it recorded. */
  public record Walked(Identity identity, Capture capture) {}

  /**
   * Walks.
   *
   * @param connected what the channels see; null where nobody said, then channel 1 with the largest
   *     range
   * @param listener hears of each message once it is through
   * @throws ScopeException naming the step that failed
   */
  public static Walked walk(
      InstrumentAccess access,
      InstrumentProfile profile,
      @Nullable Connected connected,
      Consumer<WalkStep> listener) {
    return new CaptureWalk(access, profile, listener).walk(connected);
  }

  private Walked walk(@Nullable Connected connected) {
    CapturePlan plan = plan(connected == null ? unknown() : connected);
    try (Oscilloscope scope = Oscilloscopes.open(access, profile, this::exchanged)) {
      tell();
      scope.configure(plan);
      tell();
      scope.arm();
      tell();
      await(scope, plan);
      Capture capture = scope.read();
      return new Walked(scope.identity(), capture);
    } catch (ScpiException | LinkException e) {
      throw Exchange.wrapped("opening " + access.resource(), e);
    } finally {
      tell();
    }
  }

  private CapturePlan plan(Connected connected) {
    CaptureRequest request =
        new CaptureRequest(
            Event.LOSS,
            connected.nominalVolts(),
            50,
            null,
            connected.inputs(),
            true,
            CatchMethod.FORCED_RECORD);
    Map<ChannelRole, ChannelPlan> channels =
        new ChannelPlanner(request, profile.limits()).channels();
    AppliedRecord record = AppliedRecord.forLook(profile.limits());
    return new CapturePlan(
        CatchMethod.FORCED_RECORD,
        channels,
        record.intervalSeconds(),
        record.samples(),
        0,
        null,
        List.of());
  }

  private Connected unknown() {
    double peak =
        PART_OF_LARGEST * profile.limits().largestFullScalePeakVolts() / ChannelPlanner.HEADROOM;
    return new Connected(Map.of(ChannelRole.OUTPUT, new Input(1, 1, peak)), peak / Math.sqrt(2));
  }

  private void await(Oscilloscope scope, CapturePlan plan) {
    Duration patience = PATIENCE.plus(Duration.ofNanos((long) (plan.durationSeconds() * 1e9)));
    Deadline deadline = Deadline.after(patience, access.clock());
    AcquisitionState state = asked(scope);
    while (state != AcquisitionState.COMPLETE) {
      if (deadline.hasPassed()) {
        throw new ScopeException(
            "no whole record within "
                + patience.toSeconds()
                + " s, the instrument says '"
                + state.name().toLowerCase(Locale.ROOT)
                + "': check [state], 'arm' and 'force' of the profile "
                + profile.name());
      }
      access.clock().pause(profile.timing().poll(), access.stop());
      state = asked(scope);
    }
    tell();
  }

  /** Asks for the state, and gives the question its meaning. */
  private AcquisitionState asked(Oscilloscope scope) {
    int from = pending.size();
    AcquisitionState state = scope.state();
    for (int i = from; i < pending.size(); i++) {
      WalkStep step = pending.get(i);
      if (step.key().startsWith("state")) {
        pending.set(i, meaning(step, WalkWords.state(state)));
      }
    }
    joinRepeated(from);
    return state;
  }

  /** A question that was asked again, with the same answer, is told once. */
  private void joinRepeated(int from) {
    if (from > 0 && pending.size() == from + 1) {
      WalkStep before = pending.get(from - 1);
      WalkStep now = pending.get(from);
      if (now.equals(repeated(before, 1))) {
        pending.set(from - 1, repeated(before, before.times() + 1));
        pending.remove(from);
      }
    }
  }

  private void exchanged(Exchanged exchanged) {
    pending.add(
        new WalkStep(
            exchanged.step(),
            exchanged.key(),
            WalkWords.means(exchanged),
            exchanged.sent(),
            exchanged.reply(),
            words.replyMeans(exchanged),
            1));
  }

  private void tell() {
    pending.forEach(listener);
    pending.clear();
  }

  private static WalkStep meaning(WalkStep step, String words) {
    return new WalkStep(
        step.step(), step.key(), step.means(), step.sent(), step.reply(), words, step.times());
  }

  private static WalkStep repeated(WalkStep step, int times) {
    return new WalkStep(
        step.step(), step.key(), step.means(), step.sent(), step.reply(), step.replyMeans(), times);
  }
}
