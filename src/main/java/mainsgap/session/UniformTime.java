package mainsgap.session;

import java.nio.file.Path;
import java.util.Locale;
import mainsgap.signal.TimeAxis;

/** The times that a file prints for its samples, held against an even axis. */
final class UniformTime {
  /** Stated accuracies of oscilloscope time bases go from 1 to 100 ppm: common practice. */
  static final double UNKNOWN_TIME_BASE_PPM = 100;

  /**
   * How far a time may lie off, apart from the rounding of its print, as a part of the interval.
   */
  private static final double JITTER = 0.05;

  /** Times that lie on the axis within this part of the interval were not rounded. */
  private static final double EXACT = 1e-3;

  /** The least part of the steps that rounding changes, where it counts. */
  private static final double ROUNDED_PART = 0.02;

  /** Half a last digit, whether rounded or cut off, and a little for prints of mixed length. */
  private static final double PRINT_PART = 0.6;

  /** Rounded prints fix the interval no better than this; beyond it the file is no evidence. */
  private static final double COARSEST_PPM = 1_000;

  private final Numbers seconds = new Numbers();
  private final Numbers lines = new Numbers();
  private double coarsestPrint;

  /** Takes the time of the next sample, the worth of its last digit and the line it stands on. */
  void add(double time, double printStep, int line) {
    seconds.add(time);
    lines.add(line);
    coarsestPrint = Math.max(coarsestPrint, printStep);
  }

  /** The even axis through the times: a straight line by least squares. */
  TimeAxis axis(Path file) {
    int n = seconds.size();
    double middle = (n - 1) / 2.0;
    // counted from the first one: sums over times since 1970 would lose the digits that matter
    double start = seconds.get(0);
    double mean = 0;
    for (int i = 0; i < n; i++) {
      mean += (seconds.get(i) - start - mean) / (i + 1);
    }
    double sumOfProducts = 0;
    double sumOfSquares = 0;
    for (int i = 0; i < n; i++) {
      sumOfProducts += (i - middle) * (seconds.get(i) - start - mean);
      sumOfSquares += (i - middle) * (i - middle);
    }
    double interval = sumOfProducts / sumOfSquares;
    requireForward(file);
    double worstOff = requireEven(file, interval, mean - middle * interval);
    double duration = interval * (n - 1);
    double printPpm = 2 * worstOff / duration * 1e6;
    if (printPpm > COARSEST_PPM) {
      throw new CaptureFileException(
          String.format(
              Locale.ROOT,
              "%s prints its times too coarsely, in steps of %.3g s over %.3g s; give the sample"
                  + " interval with --interval",
              file,
              coarsestPrint,
              duration));
    }
    double timeBasePpm = Math.max(UNKNOWN_TIME_BASE_PPM, printPpm);
    if (worstOff < EXACT * interval) {
      // the prints themselves are better than the sums of a fit
      double exact = (seconds.get(n - 1) - seconds.get(0)) / (n - 1);
      return new TimeAxis(seconds.get(0), exact, n, timeBasePpm);
    }
    return new TimeAxis(start + (mean - middle * interval), interval, n, timeBasePpm);
  }

  /** Rounded prints may repeat a time, but not all of them. */
  private void requireForward(Path file) {
    for (int i = 1; i < seconds.size(); i++) {
      if (seconds.get(i) < seconds.get(i - 1)) {
        throw CaptureLines.wrong(
            file,
            (int) lines.get(i),
            "goes back in time, from "
                + seconds.get(i - 1)
                + " s to "
                + seconds.get(i)
                + " s; is it the time column?");
      }
    }
    if (seconds.get(0) == seconds.get(seconds.size() - 1)) {
      throw new CaptureFileException(
          file + " has the time " + seconds.get(0) + " s on all lines; is it the time column?");
    }
  }

  /**
   * How far the worst time lies off the axis, in seconds.
   *
   * @param first the axis's first time, counted from the first time of the file
   */
  private double requireEven(Path file, double interval, double first) {
    int worst = 0;
    double worstOff = 0;
    for (int i = 0; i < seconds.size(); i++) {
      double off = Math.abs(seconds.get(i) - seconds.get(0) - (first + i * interval));
      if (off > worstOff) {
        worst = i;
        worstOff = off;
      }
    }
    if (worstOff > JITTER * interval + rounding(interval)) {
      throw CaptureLines.wrong(
          file,
          (int) lines.get(worst),
          String.format(
              Locale.ROOT,
              "is off an even time axis: %.6g s after the first sample, where steps of %.6g s lead to"
                  + " %.6g s; export every sample, or give --interval",
              seconds.get(worst) - seconds.get(0),
              interval,
              first + worst * interval));
    }
    return worstOff;
  }

  /**
   * How far the print may put a time off. Digits near the interval itself count only where many
   * steps show the rounding: else one sample left out would pass for it.
   */
  private double rounding(double interval) {
    int rounded = 0;
    for (int i = 1; i < seconds.size(); i++) {
      double step = seconds.get(i) - seconds.get(i - 1);
      rounded += Math.abs(step - interval) > JITTER * interval ? 1 : 0;
    }
    boolean isFine = coarsestPrint < interval / 2;
    return isFine || rounded > ROUNDED_PART * seconds.size() ? PRINT_PART * coarsestPrint : 0;
  }
}
