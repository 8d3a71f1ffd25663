package mainsgap.transfer;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.Waveform;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.NoInterruption;
import mainsgap.transfer.outcome.NoReturn;
import mainsgap.transfer.outcome.OtherChannels;
import mainsgap.transfer.outcome.Outcome;
import org.jspecify.annotations.Nullable;

/** Takes what the channels beside the output tell of what was measured on the output. */
final class OtherChannelFigures {
  /** The current is taken over so many nominal cycles, before the loss and at the record's end. */
  private static final int CURRENT_CYCLES = 5;

  /** A current under so many codes of the converter is none. */
  private static final double LEAST_CURRENT_CODES = 5;

  /** What is current shows its fundamental, even a rectifier's; noise shows none. */
  private static final double LEAST_FUNDAMENTAL_SHARE = 0.2;

  /** The marker's levels are those of this share of the record at either end. */
  private static final double MARKER_LEVEL_SHARE = 0.05;

  /** Its levels lie so many times farther apart than the samples at either of them. */
  private static final double MARKER_APART = 3;

  /** An opening of the switch and the output's loss this far apart are two events. */
  private static final double SAME_EVENT_CYCLES = 1;

  /** A change of the marker lasts for so many samples; a spike does not. */
  private static final int MARKER_STAYS_SAMPLES = 3;

  private final Capture capture;
  private final MeasuringTask task;
  private final @Nullable MainsLoss mains;

  /**
   * Takes what is known.
   *
   * @param mains as the mains channel shows its loss; null where it does not
   */
  OtherChannelFigures(Capture capture, MeasuringTask task, @Nullable MainsLoss mains) {
    this.capture = capture;
    this.task = task;
    this.mains = mains;
  }

  /** The outcome with what the other channels tell of it; a refused one tells nothing. */
  Outcome with(Outcome outcome) {
    return switch (outcome.kind()) {
      case MEASURED -> with((Measured) outcome);
      case NO_RETURN -> with((NoReturn) outcome);
      case NO_INTERRUPTION -> with((NoInterruption) outcome);
      case REFUSED -> outcome;
    };
  }

  private Measured with(Measured gap) {
    OtherChannels found =
        new OtherChannels(
            holdThroughMillis(gap.lossSeconds()),
            secondLeg(),
            currentAfterPercent(gap.lossSeconds(), gap.returnSeconds()),
            markerSeconds());
    double opening = lastOpeningSeconds(gap.lossSeconds(), gap.lastOpeningSeconds());
    return gap.with(found, Math.min(gap.returnSeconds(), opening));
  }

  /** A load that is not fed again draws no current of which to tell. */
  private NoReturn with(NoReturn gap) {
    OtherChannels found =
        new OtherChannels(holdThroughMillis(gap.lossSeconds()), secondLeg(), null, markerSeconds());
    return gap.with(found, lastOpeningSeconds(gap.lossSeconds(), gap.lastOpeningSeconds()));
  }

  private NoInterruption with(NoInterruption none) {
    double seconds = none.eventSeconds();
    return none.with(
        new OtherChannels(
            null, secondLeg(), currentAfterPercent(seconds, seconds), markerSeconds()));
  }

  /** An output that is left well before mains is lost was not held through that loss. */
  private @Nullable Double holdThroughMillis(double lossSeconds) {
    if (mains == null) {
      return null;
    }
    double seconds = lossSeconds - mains.lossSeconds();
    return seconds < -SAME_EVENT_CYCLES * task.cycleSeconds() ? null : (Double) (1e3 * seconds);
  }

  /** A bounce that the output shows and the mains channel does not is none of the switch's. */
  private double lastOpeningSeconds(double lossSeconds, double openingSeconds) {
    boolean same =
        mains != null
            && Math.abs(lossSeconds - mains.lossSeconds())
                < SAME_EVENT_CYCLES * task.cycleSeconds();
    return mains == null || !same
        ? openingSeconds
        : lossSeconds + mains.lastOpeningSeconds() - mains.lossSeconds();
  }

  /** The second leg is measured as the output is, with the same mains channel. */
  private OtherChannels.@Nullable SecondLeg secondLeg() {
    Waveform leg = capture.waveform(ChannelRole.SECOND_LEG).orElse(null);
    if (leg == null) {
      return null;
    }
    Map<ChannelRole, Waveform> channels = new EnumMap<>(ChannelRole.class);
    channels.put(ChannelRole.OUTPUT, leg);
    capture.waveform(ChannelRole.MAINS).ifPresent(one -> channels.put(ChannelRole.MAINS, one));
    return OtherChannels.SecondLeg.of(
        TransferMeasurement.measure(new Capture(capture.time(), channels), task));
  }

  private @Nullable Double currentAfterPercent(double lossSeconds, double returnSeconds) {
    Waveform current = capture.waveform(ChannelRole.LOAD_CURRENT).orElse(null);
    if (current == null) {
      return null;
    }
    double[] values = current.volts();
    int width = (int) Math.round(CURRENT_CYCLES * task.cycleSeconds() / interval());
    int loss = (int) Math.floor(capture.time().indexAt(lossSeconds));
    int from = loss - width;
    boolean isWhole = values.length - width > capture.time().indexAt(returnSeconds);
    if (from < 0 || !isWhole) {
      return null;
    }
    double code = current.format().isWhole() ? Math.abs(current.scale().voltsPerCode()) : 0;
    AlternatingRms before = alternating(values, from, loss);
    return before.rms() <= LEAST_CURRENT_CODES * code
            || before.fundamental() < LEAST_FUNDAMENTAL_SHARE * before.rms()
        ? null
        : (Double)
            (100 * alternating(values, values.length - width, values.length).rms() / before.rms());
  }

  /** RMS values without the offset of a clamp: of all, and of the nominal frequency alone. */
  private record AlternatingRms(double rms, double fundamental) {}

  private AlternatingRms alternating(double[] values, int from, int to) {
    double mean = 0;
    for (int i = from; i < to; i++) {
      mean += values[i] / (to - from);
    }
    double turn = 2 * Math.PI * interval() / task.cycleSeconds();
    double squares = 0;
    double cosine = 0;
    double sine = 0;
    for (int i = from; i < to; i++) {
      double value = values[i] - mean;
      squares += value * value;
      cosine += value * Math.cos(turn * i);
      sine += value * Math.sin(turn * i);
    }
    return new AlternatingRms(
        Math.sqrt(squares / (to - from)), Math.sqrt(2) * Math.hypot(cosine, sine) / (to - from));
  }

  /**
   * The first crossing, for three samples and more, of the middle between the marker's levels at
   * either end.
   */
  private @Nullable Double markerSeconds() {
    Waveform marker = capture.waveform(ChannelRole.MARKER).orElse(null);
    if (marker == null) {
      return null;
    }
    double[] values = marker.volts();
    int width = (int) Math.max(1, MARKER_LEVEL_SHARE * values.length);
    double[] first = Arrays.copyOf(values, width);
    double[] last = Arrays.copyOfRange(values, values.length - width, values.length);
    double start = median(first);
    double end = median(last);
    if (Math.abs(end - start) <= MARKER_APART * Math.max(range(first), range(last))) {
      return null;
    }
    double middle = (start + end) / 2;
    int changed = 0;
    for (int i = 0; i < values.length; i++) {
      boolean isBeyond = (values[i] > middle) != (start > middle);
      changed = isBeyond ? changed + 1 : 0;
      int at = i - MARKER_STAYS_SAMPLES + 1;
      if (changed == MARKER_STAYS_SAMPLES && at > 0) {
        double part = (middle - values[at - 1]) / (values[at] - values[at - 1]);
        return capture.time().secondsAt(at - 1 + part);
      }
    }
    return null;
  }

  private double interval() {
    return capture.time().intervalSeconds();
  }

  private static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted[sorted.length / 2];
  }

  /** The range of the middle nine tenths, which a single spike does not widen. */
  private static double range(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int cut = sorted.length / 20;
    return sorted[sorted.length - 1 - cut] - sorted[cut];
  }
}
