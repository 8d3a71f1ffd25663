package mainsgap.transfer;

import java.util.Arrays;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.CycleRms;
import mainsgap.signal.Waveform;
import org.jspecify.annotations.Nullable;

/** Takes what the channels beside the output tell of a gap that was measured on the output. */
final class OtherChannelFigures {
  /** The current is taken over so many nominal cycles, before the loss and at the record's end. */
  private static final int CURRENT_CYCLES = 5;

  /** A current under so many codes of the converter is none. */
  private static final double LEAST_CURRENT_CODES = 5;

  /** The marker's levels are those of this share of the record at either end. */
  private static final double MARKER_LEVEL_SHARE = 0.05;

  /** Its levels lie so many times farther apart than the samples at either of them. */
  private static final double MARKER_APART = 3;

  /** An opening of the switch and the output's loss this far apart are two events. */
  private static final double SAME_EVENT_CYCLES = 1;

  private final Capture capture;
  private final MeasuringTask task;
  private final Measured measured;

  OtherChannelFigures(Capture capture, MeasuringTask task, Measured measured) {
    this.capture = capture;
    this.task = task;
    this.measured = measured;
  }

  /** The gap with what the other channels tell of it. */
  Measured figures(@Nullable MainsLoss mains) {
    OtherChannels found =
        new OtherChannels(
            holdThroughMillis(mains), secondLeg(), currentAfterPercent(), markerSeconds());
    return measured.with(found, lastOpeningSeconds(mains));
  }

  /** An output that is left well before mains is lost was not held through that loss. */
  private @Nullable Double holdThroughMillis(@Nullable MainsLoss mains) {
    if (mains == null) {
      return null;
    }
    double seconds = measured.lossSeconds() - mains.lossSeconds();
    return seconds < -SAME_EVENT_CYCLES * task.cycleSeconds() ? null : (Double) (1e3 * seconds);
  }

  /** A bounce that the output shows and the mains channel does not is none of the switch's. */
  private double lastOpeningSeconds(@Nullable MainsLoss mains) {
    boolean same =
        mains != null
            && Math.abs(measured.lossSeconds() - mains.lossSeconds())
                < SAME_EVENT_CYCLES * task.cycleSeconds();
    if (mains == null || !same) {
      return measured.lastOpeningSeconds();
    }
    double bounce = mains.lastOpeningSeconds() - mains.lossSeconds();
    return Math.min(measured.returnSeconds(), measured.lossSeconds() + bounce);
  }

  private OtherChannels.@Nullable SecondLeg secondLeg() {
    Waveform leg = capture.waveform(ChannelRole.SECOND_LEG).orElse(null);
    if (leg == null) {
      return null;
    }
    Outcome outcome = TransferMeasurement.measure(Capture.ofOutput(capture.time(), leg), task);
    return switch (outcome.kind()) {
      case MEASURED -> {
        Measured gap = (Measured) outcome;
        yield new OtherChannels.SecondLeg(
            gap.transferMillis(), null, gap.uncertaintyMillis(), null);
      }
      case NO_RETURN -> {
        NoReturn gap = (NoReturn) outcome;
        yield new OtherChannels.SecondLeg(null, gap.atLeastMillis(), gap.uncertaintyMillis(), null);
      }
      case NO_INTERRUPTION ->
          new OtherChannels.SecondLeg(
              0.0, null, ((NoInterruption) outcome).shortestVisibleMillis(), null);
      case REFUSED -> new OtherChannels.SecondLeg(null, null, 0, ((Refused) outcome).reason());
    };
  }

  private @Nullable Double currentAfterPercent() {
    Waveform current = capture.waveform(ChannelRole.LOAD_CURRENT).orElse(null);
    if (current == null) {
      return null;
    }
    double[] values = current.volts();
    int width = (int) Math.round(CURRENT_CYCLES * task.cycleSeconds() / interval());
    int loss = (int) Math.floor(capture.time().indexAt(measured.lossSeconds()));
    int from = Math.max(0, loss - width);
    double code = current.format().isWhole() ? Math.abs(current.scale().voltsPerCode()) : 0;
    boolean isWhole = values.length - width > capture.time().indexAt(measured.returnSeconds());
    double before = loss > from ? CycleRms.of(values, from, loss) : 0;
    return !isWhole || before <= LEAST_CURRENT_CODES * code
        ? null
        : (Double) (100 * CycleRms.of(values, values.length - width, values.length) / before);
  }

  /** The first crossing of the middle between the marker's levels at either end of the record. */
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
    for (int i = 1; i < values.length; i++) {
      if ((values[i] > middle) != (start > middle)) {
        double part = (middle - values[i - 1]) / (values[i] - values[i - 1]);
        return capture.time().secondsAt(i - 1 + part);
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
