package mainsgap.arming;

import mainsgap.signal.TimeAxis;
import mainsgap.signal.Waveform;
import org.jspecify.annotations.Nullable;

/**
 * The plain figures of a live signal.
 *
 * @param rmsVolts over whole cycles where there are any, else over all samples
 * @param frequencyHertz null where there is no whole cycle
 * @param clippedPercent of the samples
 */
public record LiveSignal(double rmsVolts, @Nullable Double frequencyHertz, double clippedPercent) {
  /** A crossing counts once the signal was this part of its half span below the middle. */
  private static final double HYSTERESIS = 0.2;

  /** The figures of {@code waveform}, which is at least one sample long. */
  public static LiveSignal of(Waveform waveform, TimeAxis time) {
    double[] volts = waveform.volts();
    Crossings crossings = Crossings.of(volts);
    int from = crossings.count < 2 ? 0 : (int) Math.ceil(crossings.first);
    int to = crossings.count < 2 ? volts.length : (int) Math.ceil(crossings.last);
    Double frequency =
        crossings.count < 2
            ? null
            : (crossings.count - 1) / ((crossings.last - crossings.first) * time.intervalSeconds());
    return new LiveSignal(rms(volts, from, to), frequency, clippedPercent(waveform));
  }

  private static double rms(double[] volts, int from, int to) {
    double sumOfSquares = 0;
    for (int i = from; i < to; i++) {
      sumOfSquares += volts[i] * volts[i];
    }
    return Math.sqrt(sumOfSquares / (to - from));
  }

  private static double clippedPercent(Waveform waveform) {
    int clipped = 0;
    for (int i = 0; i < waveform.length(); i++) {
      if (waveform.isClippedAt(i)) {
        clipped++;
      }
    }
    return 100.0 * clipped / waveform.length();
  }

  /** Rising crossings of the middle of the span, placed between two samples by a straight line. */
  private static final class Crossings {
    private int count;
    private double first;
    private double last;

    private static Crossings of(double[] volts) {
      double lowest = Double.POSITIVE_INFINITY;
      double highest = Double.NEGATIVE_INFINITY;
      for (double v : volts) {
        lowest = Math.min(lowest, v);
        highest = Math.max(highest, v);
      }
      double middle = (lowest + highest) / 2;
      double low = middle - HYSTERESIS * (highest - lowest) / 2;
      Crossings crossings = new Crossings();
      boolean wasLow = false;
      for (int i = 0; i < volts.length; i++) {
        if (volts[i] < low) {
          wasLow = true;
        } else if (wasLow && volts[i] >= middle) {
          wasLow = false;
          crossings.add(i - (volts[i] - middle) / (volts[i] - volts[i - 1]));
        }
      }
      return crossings;
    }

    private void add(double index) {
      if (count == 0) {
        first = index;
      }
      last = index;
      count++;
    }
  }
}
