package mainsgap.bench;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import mainsgap.arming.LiveSignal;
import mainsgap.arming.MainsState;
import mainsgap.arming.RigComplaint;
import mainsgap.scope.CapturePlan;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import org.jspecify.annotations.Nullable;

/**
 * How a check of a rig ended.
 *
 * @param kind which way
 * @param sentence what happened and what to do, for people
 * @param instrument who it says it is, and where; empty where it was not reached
 * @param seen what was looked at; null where it did not come so far
 */
public record RigCheckEnd(Kind kind, String sentence, String instrument, @Nullable Seen seen) {

  /** The ways in which a check ends. */
  public enum Kind {
    /** A series can begin. */
    RIGHT,
    /** Something has to be mended first. */
    NOT_RIGHT,
    /** The user asked for something that cannot be; nothing was taken. */
    WRONG_USE,
    /** The instrument or its link failed. */
    INSTRUMENT_FAILED,
    /** Stopped by the user. */
    STOPPED
  }

  /**
   * What the rig shows.
   *
   * @param look a few cycles of the live signal
   * @param signals the figures of each channel
   * @param mains whether mains is there
   * @param complaints what is wrong, and what is to be known
   * @param method how the event would be caught, in words
   * @param blindZone what can be missed in that way, in words
   * @param isBlind whether anything can be missed
   * @param explanation what was planned and why, one sentence each
   * @param ranges how far each channel reaches in volts (a current in amperes)
   */
  public record Seen(
      Capture look,
      Map<ChannelRole, LiveSignal> signals,
      MainsState mains,
      List<RigComplaint> complaints,
      String method,
      String blindZone,
      boolean isBlind,
      List<String> explanation,
      Map<ChannelRole, Double> ranges) {

    /** Takes its own copies. */
    public Seen {
      signals = Map.copyOf(signals);
      complaints = List.copyOf(complaints);
      explanation = List.copyOf(explanation);
      ranges = Map.copyOf(ranges);
    }

    static Seen of(
        Capture look, MainsState mains, List<RigComplaint> complaints, CapturePlan plan) {
      Map<ChannelRole, LiveSignal> signals = new EnumMap<>(ChannelRole.class);
      look.waveforms()
          .forEach((role, waveform) -> signals.put(role, LiveSignal.of(waveform, look.time())));
      Map<ChannelRole, Double> ranges = new EnumMap<>(ChannelRole.class);
      plan.channels().forEach((role, channel) -> ranges.put(role, channel.fullScalePeakVolts()));
      return new Seen(
          look,
          signals,
          mains,
          complaints,
          plan.method().words(),
          plan.blindness().words(),
          plan.blindness().isAny(),
          plan.explanation(),
          ranges);
    }
  }

  /** What has to be mended before a series, the worst first; empty where nothing has. */
  public List<RigComplaint> toMend() {
    return seen == null
        ? List.of()
        : seen.complaints().stream().filter(one -> one.kind().mustBeMended()).toList();
  }
}
