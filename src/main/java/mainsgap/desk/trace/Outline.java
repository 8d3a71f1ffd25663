package mainsgap.desk.trace;

import mainsgap.signal.Envelope;
import mainsgap.signal.VoltExtent;

/**
 * How far up and down a line reaches in each quarter of a pixel across the plot. Nothing is hidden:
 * a strip that holds many samples reaches from the lowest to the highest of them.
 */
final class Outline {
  /** Strips in a pixel: enough for smooth edges. */
  static final int PER_PIXEL = 4;

  /**
   * From so many samples in a strip on, its ends are rounded to where the envelope tells quickly:
   * by less than an eighth of the strip, and no sample is left out.
   */
  private static final int SAMPLES_FOR_ROUND_ENDS = 8 * Envelope.FACTOR;

  private final float[] top;
  private final float[] bottom;

  Outline(int widthPixels) {
    top = new float[widthPixels * PER_PIXEL];
    bottom = new float[widthPixels * PER_PIXEL];
  }

  /** The number of strips. */
  int length() {
    return top.length;
  }

  /** The smallest y in pixels that the line has in the strip; NaN where there is no line. */
  float top(int strip) {
    return top[strip];
  }

  /** The largest y in pixels that the line has in the strip; NaN where there is no line. */
  float bottom(int strip) {
    return bottom[strip];
  }

  /** Takes the line through the samples of {@code trace}. */
  void take(Trace trace, PlotFrame frame) {
    double index = trace.indexAt(secondsAt(0, frame));
    double volts = trace.voltsAt(index);
    for (int strip = 0; strip < length(); strip++) {
      double nextIndex = trace.indexAt(secondsAt(strip + 1, frame));
      double nextVolts = trace.voltsAt(nextIndex);
      VoltExtent inside = samplesBetween(trace, index, nextIndex);
      set(
          strip,
          lower(lower(inside.lowestVolts(), volts), nextVolts),
          higher(higher(inside.highestVolts(), volts), nextVolts),
          frame);
      index = nextIndex;
      volts = nextVolts;
    }
  }

  /** Takes the line of {@code curve}. */
  void take(Curve curve, PlotFrame frame) {
    double volts = voltsOf(curve, secondsAt(0, frame));
    for (int strip = 0; strip < length(); strip++) {
      double nextVolts = voltsOf(curve, secondsAt(strip + 1, frame));
      set(
          strip,
          lower(lower(Double.POSITIVE_INFINITY, volts), nextVolts),
          higher(higher(Double.NEGATIVE_INFINITY, volts), nextVolts),
          frame);
      volts = nextVolts;
    }
  }

  /**
   * Leaves out what {@code dash} leaves out. The pattern starts at the zero of the picture where
   * that is in sight, so that it keeps its place while the view moves.
   */
  void breakUp(Dash dash, PlotFrame frame, double pixelsOfUsual) {
    int zero = (int) Math.max(0, Math.min(length(), frame.xOf(0) * PER_PIXEL));
    double along = 0;
    for (int strip = 0; strip < zero; strip++) {
      along -= lengthPixels(strip);
    }
    for (int strip = 0; strip < length(); strip++) {
      along += lengthPixels(strip);
      if (!dash.isDrawnAt(along / pixelsOfUsual)) {
        top[strip] = Float.NaN;
        bottom[strip] = Float.NaN;
      }
    }
  }

  private double lengthPixels(int strip) {
    double rise = Float.isNaN(top[strip]) ? 0 : bottom[strip] - top[strip];
    return Math.hypot(1.0 / PER_PIXEL, rise);
  }

  private double secondsAt(int strip, PlotFrame frame) {
    return frame.secondsAt((double) strip / PER_PIXEL);
  }

  /** Of neighbouring ranges, each sample lies in one. */
  private static VoltExtent samplesBetween(Trace trace, double from, double to) {
    int first = (int) Math.max(0, Math.ceil(from));
    int end = (int) Math.min(trace.envelope().length(), Math.floor(to) + 1);
    if (to - from > SAMPLES_FOR_ROUND_ENDS) {
      first = roundEnd(first);
      end = Math.min(trace.envelope().length(), roundEnd(end));
    }
    return first < end ? trace.envelope().extent(first, end) : VoltExtent.NONE;
  }

  /** Rounded alike for the end of a range and the start of the next one. */
  private static int roundEnd(int index) {
    return (index + Envelope.FACTOR - 1) / Envelope.FACTOR * Envelope.FACTOR;
  }

  private static double voltsOf(Curve curve, double seconds) {
    return curve.span().holds(seconds) ? curve.volts().applyAsDouble(seconds) : Double.NaN;
  }

  private void set(int strip, double lowestVolts, double highestVolts, PlotFrame frame) {
    boolean there = lowestVolts <= highestVolts;
    top[strip] = there ? (float) frame.yOf(highestVolts) : Float.NaN;
    bottom[strip] = there ? (float) frame.yOf(lowestVolts) : Float.NaN;
  }

  /** The lower of both; {@code other} counts where it is a number. */
  private static double lower(double volts, double other) {
    return other < volts ? other : volts;
  }

  private static double higher(double volts, double other) {
    return other > volts ? other : volts;
  }
}
