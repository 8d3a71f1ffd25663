package mainsgap.arming;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import mainsgap.scope.CapturePlan;
import mainsgap.scope.CapturePlan.ChannelPlan;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.Waveform;
import mainsgap.transfer.MeasuringTask;

/** What the live signal must be before anything is armed; limits are common practice. */
final class Preflight {
  /** Below this part of nominal there is no supply: residues of filters and pickup lie under it. */
  private static final double NO_SIGNAL_PART = 0.10;

  /** A supply stays within 10 % (EN 50160); inverters and probes get some more. */
  private static final double RMS_PART = 0.15;

  /** Wide enough for any generator, narrow enough to tell 50 from 60 Hz. */
  private static final double FREQUENCY_PART = 0.06;

  private final CapturePlan plan;
  private final MeasuringTask task;

  Preflight(CapturePlan plan, MeasuringTask task) {
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
  MainsState supply(Capture look) {
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

  private Optional<String> complaint(Capture look, ChannelRole role) {
    Optional<Waveform> waveform = look.waveform(role);
    ChannelPlan channel = plan.channels().get(role);
    if (waveform.isEmpty() || channel == null) {
      return Optional.empty();
    }
    return complaint(role, channel, LiveSignal.of(waveform.get(), look.time()));
  }

  private Optional<String> complaint(ChannelRole role, ChannelPlan channel, LiveSignal signal) {
    String where = "channel " + channel.number() + " (" + role.words() + ")";
    double nominal = task.nominalVolts();
    if (signal.rmsVolts() < NO_SIGNAL_PART * nominal) {
      return Optional.of(
          text(
              "%s shows %.1f V RMS where %.0f V is nominal: no signal. %s",
              where, signal.rmsVolts(), nominal, advice(role)));
    }
    if (signal.clippedPercent() > 0) {
      return Optional.of(
          text(
              "%s is clipped in %.1f %% of its samples at a range of %.0f V peak: are the probe factor"
                  + " of %s and the nominal %.0f V right? If so, use a probe with a larger factor",
              where,
              signal.clippedPercent(),
              channel.fullScalePeakVolts(),
              plain(channel.probeFactor()),
              nominal));
    }
    if (Math.abs(signal.rmsVolts() - nominal) > RMS_PART * nominal) {
      return Optional.of(
          text(
              "%s shows %.1f V RMS, allowed %.1f to %.1f V around %.0f V nominal: is the probe factor"
                  + " of %s right?",
              where,
              signal.rmsVolts(),
              (1 - RMS_PART) * nominal,
              (1 + RMS_PART) * nominal,
              nominal,
              plain(channel.probeFactor())));
    }
    return frequencyComplaint(where, signal);
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
    return role == ChannelRole.OUTPUT
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
