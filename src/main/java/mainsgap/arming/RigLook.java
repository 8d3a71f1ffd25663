package mainsgap.arming;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import mainsgap.arming.RigComplaint.Kind;
import mainsgap.scope.CapturePlan;
import mainsgap.scope.CapturePlan.ChannelPlan;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.Scale;
import mainsgap.signal.Waveform;
import mainsgap.transfer.outcome.MeasuringTask;

/**
 * A look at a whole rig through a few cycles of the live signal: all that {@link Preflight} would
 * refuse, and what only the channels together tell. Limits are own choices where nothing is named.
 */
public final class RigLook {
  private static final ChannelRole[] SUPPLIES = {
    ChannelRole.OUTPUT, ChannelRole.MAINS, ChannelRole.SECOND_LEG
  };

  /** A range that came back a little smaller than planned is no fault. */
  private static final double LEAST_PART_OF_REACH = 0.95;

  private static final double HEADROOM = 1.5;

  /** Below this part of what the clamp may see there is only its noise. */
  private static final double NO_CURRENT_PART = 0.005;

  /** In step to within about 25 degrees. */
  private static final double IN_STEP = 0.9;

  /** What is left between two probes at one place: their tolerance and noise. */
  private static final double SAME_PART = 0.02;

  private final CapturePlan plan;
  private final MeasuringTask task;
  private final Preflight preflight;

  /** The rules for what {@code plan} records and {@code task} wants. */
  public RigLook(CapturePlan plan, MeasuringTask task) {
    this.plan = plan;
    this.task = task;
    this.preflight = new Preflight(plan, task);
  }

  /** All that is to be said about the rig, channel by channel. */
  public List<RigComplaint> complaints(Capture look) {
    List<RigComplaint> complaints = new ArrayList<>();
    for (ChannelRole role : SUPPLIES) {
      complaints.addAll(preflight.complaints(look, role));
      reach(look, role).ifPresent(complaints::add);
    }
    current(look).ifPresent(complaints::add);
    together(look).ifPresent(complaints::add);
    return complaints;
  }

  /** Whether mains is there. */
  public MainsState supply(Capture look) {
    return preflight.supply(look);
  }

  /** The instrument may have set a smaller range than it was told. */
  private Optional<RigComplaint> reach(Capture look, ChannelRole role) {
    ChannelPlan channel = plan.channels().get(role);
    if (channel == null) {
      return Optional.empty();
    }
    double needed = HEADROOM * task.nominalPeakVolts();
    return look.waveform(role)
        .map(waveform -> reachVolts(waveform.scale()))
        .filter(reach -> reach < LEAST_PART_OF_REACH * needed)
        .map(
            reach ->
                new RigComplaint(
                    role,
                    Kind.RANGE,
                    text(
                        "%s reaches %.0f V, needed are %.0f V, 1.5 times the nominal peak, so that an"
                            + " overshoot is seen: use a probe with a larger factor, or another"
                            + " instrument",
                        Preflight.where(role, channel), reach, needed)));
  }

  private static double reachVolts(Scale scale) {
    double one = Math.abs(scale.voltsOf(scale.lowestCode()));
    double other = Math.abs(scale.voltsOf(scale.highestCode()));
    return Math.min(one, other);
  }

  private Optional<RigComplaint> current(Capture look) {
    ChannelPlan channel = plan.channels().get(ChannelRole.LOAD_CURRENT);
    if (channel == null) {
      return Optional.empty();
    }
    return look.waveform(ChannelRole.LOAD_CURRENT)
        .map(waveform -> LiveSignal.of(waveform, look.time()).rmsVolts())
        .filter(amperes -> amperes < NO_CURRENT_PART * channel.expectedPeakVolts())
        .map(
            amperes ->
                new RigComplaint(
                    ChannelRole.LOAD_CURRENT,
                    Kind.NO_LOAD,
                    text(
                        "%s shows %.3f A RMS of up to %.3g A peak: no load. Connect at least a small"
                            + " resistive load, and see that the clamp is around one conductor alone",
                        Preflight.where(ChannelRole.LOAD_CURRENT, channel),
                        amperes,
                        channel.expectedPeakVolts())));
  }

  /** What output and mains tell of each other. */
  private Optional<RigComplaint> together(Capture look) {
    Optional<Waveform> mains = look.waveform(ChannelRole.MAINS);
    if (mains.isEmpty()) {
      return Optional.empty();
    }
    LiveSignal ofMains = LiveSignal.of(mains.get(), look.time());
    LiveSignal ofOutput = LiveSignal.of(look.output(), look.time());
    if (!preflight.isThere(ofMains) && preflight.isThere(ofOutput)) {
      return Optional.of(
          new RigComplaint(
              ChannelRole.OUTPUT,
              Kind.EXCHANGED,
              text(
                  "mains is off, and the output shows %.0f V RMS: it is live from the unit's battery."
                      + " If mains should be on, are the two probes exchanged?",
                  ofOutput.rmsVolts())));
    }
    if (preflight.isThere(ofMains) && !preflight.isThere(ofOutput)) {
      return Optional.of(
          new RigComplaint(
              ChannelRole.OUTPUT,
              Kind.EXCHANGED,
              text(
                  "mains shows %.0f V RMS and the output nothing: the unit is off, or the two probes"
                      + " are exchanged and the unit runs from its battery",
                  ofMains.rmsVolts())));
    }
    return preflight.isThere(ofMains)
        ? Optional.of(inStep(look.output().volts(), mains.get().volts()))
            .filter(said -> !said.sentence().isEmpty())
        : Optional.empty();
  }

  private RigComplaint inStep(double[] output, double[] mains) {
    double correlation = correlation(output, mains);
    if (correlation < -IN_STEP) {
      return new RigComplaint(
          ChannelRole.OUTPUT,
          Kind.EXCHANGED,
          "the output is mains upside down: one of the two probes has line and neutral exchanged, or"
              + " the unit's socket has");
    }
    if (correlation < IN_STEP) {
      return new RigComplaint(
          ChannelRole.OUTPUT,
          Kind.OUT_OF_STEP,
          "the output is not in step with mains: does the unit run from mains? One that is still on"
              + " its battery shows no gap; let it settle first");
    }
    return new RigComplaint(
        ChannelRole.OUTPUT,
        Kind.REMARK,
        difference(output, mains) < SAME_PART * task.nominalVolts()
            ? "output and mains are the same wave: right where the unit passes mains through; a unit"
                + " that always makes its own output would differ, so look whether both probes are"
                + " at one place"
            : "");
  }

  private static double correlation(double[] a, double[] b) {
    double both = 0;
    double squaresOfA = 0;
    double squaresOfB = 0;
    for (int i = 0; i < a.length; i++) {
      both += a[i] * b[i];
      squaresOfA += a[i] * a[i];
      squaresOfB += b[i] * b[i];
    }
    return both / Math.sqrt(squaresOfA * squaresOfB);
  }

  private static double difference(double[] a, double[] b) {
    double squares = 0;
    for (int i = 0; i < a.length; i++) {
      squares += (a[i] - b[i]) * (a[i] - b[i]);
    }
    return Math.sqrt(squares / a.length);
  }

  private static String text(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
