package mainsgap.transfer;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.CycleRms;
import mainsgap.signal.Event;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.NoInterruption;
import mainsgap.transfer.outcome.NoReturn;
import mainsgap.transfer.outcome.OtherChannels;
import mainsgap.transfer.outcome.Outcome;
import org.jspecify.annotations.Nullable;

/** Says of each channel that was watched beside the output, and tells nothing, why it does not. */
public final class SilentChannels {
  /** A mains channel this far from nominal has another probe factor, or is another signal. */
  private static final double OFF_SHARE_OF_NOMINAL = 0.2;

  /** The record's start, before the event. */
  private static final double START_CYCLES = 2;

  private final Capture capture;
  private final MeasuringTask task;
  private final Event event;

  private SilentChannels(Capture capture, MeasuringTask task, Event event) {
    this.capture = capture;
    this.task = task;
    this.event = event;
  }

  /** Of several events in one capture each has its own. */
  private static Event event(Outcome outcome, MeasuringTask task) {
    return switch (outcome.kind()) {
      case MEASURED -> ((Measured) outcome).event();
      case NO_RETURN -> ((NoReturn) outcome).event();
      case NO_INTERRUPTION -> ((NoInterruption) outcome).event();
      case REFUSED -> task.event();
    };
  }

  /** A sentence for each such channel of {@code capture}, from which {@code outcome} was taken. */
  public static List<String> of(Capture capture, MeasuringTask task, Outcome outcome) {
    SilentChannels channels = new SilentChannels(capture, task, event(outcome, task));
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
    OtherChannels others = outcome.others();
    return switch (role) {
      case MAINS -> {
        boolean isInterrupted = outcome.kind() != Outcome.Kind.NO_INTERRUPTION;
        yield others.holdThroughMillis() == null ? mains(isInterrupted) : null;
      }
      case LOAD_CURRENT ->
          others.loadCurrentAfterPercent() == null
              ? outcome.kind() == Outcome.Kind.NO_RETURN
                  ? "not looked at, as the output does not return"
                  : "cannot tell: no current is seen before the event, or the record holds fewer than"
                      + " five cycles before it or after it"
              : null;
      case MARKER ->
          others.markerSeconds() == null
              ? "cannot tell: its levels at the record's start and end are not apart"
              : null;
      case SECOND_LEG, OUTPUT -> null;
    };
  }

  private @Nullable String mains(boolean isInterrupted) {
    String level = mainsLevel();
    if (level != null) {
      return level;
    }
    return event == Event.LOSS && isInterrupted
        ? "cannot tell how long the unit held: no loss of mains is located in it, or none of this"
            + " event"
        : null;
  }

  /** Why the level tells that this is no mains; null where it may be. */
  private @Nullable String mainsLevel() {
    if (event != Event.LOSS) {
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
