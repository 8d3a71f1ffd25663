package mainsgap.arming;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import mainsgap.arming.RigComplaint.Kind;
import mainsgap.scope.CapturePlan;
import mainsgap.scope.CapturePlan.ChannelPlan;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.Waveform;
import mainsgap.transfer.outcome.MeasuringTask;

/** What the live signal must be before anything is armed; limits are common practice. */
public final class Preflight {
  /** Below this part of nominal there is no supply: residues of filters and pickup lie under it. */
  private static final double NO_SIGNAL_PART = 0.10;

  /** A supply stays within 10 % (EN 50160); inverters and probes get some more. */
  private static final double RMS_PART = 0.15;

  /** Wide enough for any generator, narrow enough to tell 50 from 60 Hz. */
  private static final double FREQUENCY_PART = 0.06;

  private final CapturePlan plan;
  private final MeasuringTask task;

  /** The rules for what {@code plan} records and {@code task} wants. */
  public Preflight(CapturePlan plan, MeasuringTask task) {
    this.plan = plan;
    this.task = task;
  }

  /** The first thing that is not right with the output, in a sentence; empty where all is well. */
  Optional<String> complaintAboutOutput(Capture look) {
    return complaint(look, ChannelRole.OUTPUT);
  }

  /** The first thing that is not right with the mains; empty where all is well or none is seen. */
  Optional<String> complaintAboutMains(Capture look) {
    return complaint(look, ChannelRole.MAINS);
  }

  /** What the channels show, for the eye of the one who is about to switch. */
  String readings(Capture look) {
    return "before the first trial: "
        + Stream.of(ChannelRole.OUTPUT, ChannelRole.MAINS)
            .flatMap(role -> look.waveform(role).stream().map(seen -> reading(role, seen, look)))
            .collect(Collectors.joining("; "));
  }

  private static String reading(ChannelRole role, Waveform seen, Capture look) {
    LiveSignal signal = LiveSignal.of(seen, look.time());
    return role.words()
        + text(" %.1f V RMS", signal.rmsVolts())
        + (signal.frequencyHertz() == null ? "" : text(", %.2f Hz", signal.frequencyHertz()));
  }

  /** Whether mains is there. */
  public MainsState supply(Capture look) {
    return look.waveform(ChannelRole.MAINS)
        .map(waveform -> LiveSignal.of(waveform, look.time()).rmsVolts())
        .map(
            rms ->
                rms >= (1 - RMS_PART) * task.nominalVolts()
                    ? MainsState.PRESENT
                    : rms < NO_SIGNAL_PART * task.nominalVolts()
                        ? MainsState.ABSENT
                        : MainsState.POOR)
        .orElse(MainsState.UNKNOWN);
  }

  /** All that is not right with one channel that sees a supply; empty where it is not watched. */
  List<RigComplaint> complaints(Capture look, ChannelRole role) {
    Optional<Waveform> waveform = look.waveform(role);
    ChannelPlan channel = plan.channels().get(role);
    if (waveform.isEmpty() || channel == null) {
      return List.of();
    }
    LiveSignal signal = LiveSignal.of(waveform.get(), look.time());
    String where = where(role, channel);
    if (signal.rmsVolts() < NO_SIGNAL_PART * task.nominalVolts()) {
      return List.of(
          new RigComplaint(role, Kind.NO_SIGNAL, noSignal(where, signal) + advice(role)));
    }
    List<RigComplaint> complaints = new ArrayList<>();
    if (signal.clippedPercent() > 0) {
      complaints.add(new RigComplaint(role, Kind.CLIPPED, clipped(where, channel, signal)));
    } else if (!isNearNominal(signal)) {
      complaints.add(new RigComplaint(role, Kind.VOLTAGE, offVoltage(where, channel, signal)));
    }
    frequencyComplaint(where, signal)
        .ifPresent(sentence -> complaints.add(new RigComplaint(role, Kind.FREQUENCY, sentence)));
    return complaints;
  }

  /** Whether a supply is seen at all. */
  boolean isThere(LiveSignal signal) {
    return signal.rmsVolts() >= NO_SIGNAL_PART * task.nominalVolts();
  }

  private boolean isNearNominal(LiveSignal signal) {
    return Math.abs(signal.rmsVolts() - task.nominalVolts()) <= RMS_PART * task.nominalVolts();
  }

  /** The channel for people: its number and its role. */
  static String where(ChannelRole role, ChannelPlan channel) {
    return "channel " + channel.number() + " (" + role.words() + ")";
  }

  private Optional<String> complaint(Capture look, ChannelRole role) {
    return complaints(look, role).stream().findFirst().map(RigComplaint::sentence);
  }

  private String noSignal(String where, LiveSignal signal) {
    return text(
        "%s shows %.1f V RMS where %.0f V is nominal: no signal. ",
        where, signal.rmsVolts(), task.nominalVolts());
  }

  private String clipped(String where, ChannelPlan channel, LiveSignal signal) {
    return text(
        "%s is clipped in %.1f %% of its samples at a range of %.0f V peak: are the probe factor"
            + " of %s and the nominal %.0f V right? If so, use a probe with a larger factor",
        where,
        signal.clippedPercent(),
        channel.fullScalePeakVolts(),
        plain(channel.probeFactor()),
        task.nominalVolts());
  }

  private String offVoltage(String where, ChannelPlan channel, LiveSignal signal) {
    double nominal = task.nominalVolts();
    return text(
        "%s shows %.1f V RMS, allowed %.1f to %.1f V around %.0f V nominal: is the probe factor"
            + " of %s right?",
        where,
        signal.rmsVolts(),
        (1 - RMS_PART) * nominal,
        (1 + RMS_PART) * nominal,
        nominal,
        plain(channel.probeFactor()));
  }

  private Optional<String> frequencyComplaint(String where, LiveSignal signal) {
    double nominal = task.nominalFrequencyHertz();
    Double found = signal.frequencyHertz();
    if (found == null) {
      return Optional.of(
          text(
              "%s shows %.1f V RMS but no whole cycle of %.0f Hz: is it an alternating voltage?",
              where, signal.rmsVolts(), nominal));
    }
    if (Math.abs(found - nominal) > FREQUENCY_PART * nominal) {
      return Optional.of(
          text(
              "%s shows %.2f Hz, allowed %.1f to %.1f Hz around %.0f Hz nominal: is the nominal"
                  + " frequency right?",
              where,
              found,
              (1 - FREQUENCY_PART) * nominal,
              (1 + FREQUENCY_PART) * nominal,
              nominal));
    }
    return Optional.empty();
  }

  private static String advice(ChannelRole role) {
    return role != ChannelRole.MAINS
        ? "Connect the probe to the unit's output and switch the unit on; with no load connected,"
            + " connect at least a small resistive load"
        : "Connect the probe downstream of the mains switch and close the switch";
  }

  private static String plain(double number) {
    return number == Math.rint(number) ? text("%.0f", number) : Double.toString(number);
  }

  private static String text(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
