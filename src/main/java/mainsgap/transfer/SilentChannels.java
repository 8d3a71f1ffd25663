package mainsgap.transfer;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.CycleRms;
import mainsgap.signal.Event;
import org.jspecify.annotations.Nullable;

/** Says of each channel that was watched beside the output, and tells nothing, why it does not. */
public final class SilentChannels {
  /** A mains channel this far from nominal has another probe factor, or is another signal. */
  private static final double OFF_SHARE_OF_NOMINAL = 0.2;

  /** The record's start, before the event. */
  private static final double START_CYCLES = 2;

  private final Capture capture;
  private final MeasuringTask task;

  private SilentChannels(Capture capture, MeasuringTask task) {
    this.capture = capture;
    this.task = task;
  }

  /** A sentence for each such channel of {@code capture}, from which {@code outcome} was taken. */
  public static List<String> of(Capture capture, MeasuringTask task, Outcome outcome) {
    SilentChannels channels = new SilentChannels(capture, task);
    List<String> sentences = new ArrayList<>();
    for (ChannelRole role : ChannelRole.values()) {
      if (capture.waveform(role).isPresent()) {
        String why = channels.why(role, outcome);
        if (why != null) {
          sentences.add(role.words() + " channel: " + why);
        }
      }
    }
    return sentences;
  }

  private @Nullable String why(ChannelRole role, Outcome outcome) {
    if (role == ChannelRole.OUTPUT || outcome.kind() == Outcome.Kind.REFUSED) {
      return null;
    }
    if (role == ChannelRole.MAINS && outcome.kind() != Outcome.Kind.MEASURED) {
      return mainsLevel();
    }
    if (!(outcome instanceof Measured measured)) {
      return "not looked at, as the output has no gap with both ends";
    }
    OtherChannels others = measured.others();
    return switch (role) {
      case MAINS -> others.holdThroughMillis() == null ? mains() : null;
      case LOAD_CURRENT ->
          others.loadCurrentAfterPercent() == null
              ? "cannot tell: the current before the loss is none, or the record ends within five"
                  + " cycles after the return"
              : null;
      case MARKER ->
          others.markerSeconds() == null
              ? "cannot tell: its levels at the record's start and end are not apart"
              : null;
      case SECOND_LEG, OUTPUT -> null;
    };
  }

  private @Nullable String mains() {
    String level = mainsLevel();
    if (level != null) {
      return level;
    }
    return task.event() == Event.LOSS
        ? "cannot tell when mains was lost: no loss is found in it"
        : null;
  }

  /** Why the level tells that this is no mains; null where it may be. */
  private @Nullable String mainsLevel() {
    if (task.event() != Event.LOSS) {
      return null;
    }
    double[] volts = capture.waveform(ChannelRole.MAINS).orElseThrow().volts();
    int cycles = (int) (START_CYCLES * task.cycleSeconds() / capture.time().intervalSeconds());
    double found = CycleRms.of(volts, 0, Math.max(1, Math.min(volts.length, cycles)));
    double nominal = task.nominalVolts();
    return Math.abs(found - nominal) <= OFF_SHARE_OF_NOMINAL * nominal
        ? null
        : String.format(
            Locale.ROOT,
            "cannot tell: %.4g V RMS at the record's start, nominal %.4g V: is its probe factor"
                + " right?",
            found,
            nominal);
  }
}
