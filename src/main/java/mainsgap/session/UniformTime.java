package mainsgap.session;

import java.nio.file.Path;
import java.util.Locale;
import mainsgap.signal.TimeAxis;

/** The times that a file prints for its samples, held against an even axis. */
final class UniformTime {
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

  /** An interval that is given and times that are printed may come from two clocks. */
  private static final double OWN_CLOCK_PPM = 1_000;

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
  TimeAxis axis(Path file, TimeBase timeBase) {
    Line line = fitted();
    requireForward(file);
    double worstOff = requireEven(file, line);
    int n = seconds.size();
    double duration = line.interval() * (n - 1);
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
    // the prints themselves are better than the sums of a fit, where they were not rounded
    boolean isExact = worstOff < EXACT * line.interval();
    double start = isExact ? seconds.get(0) : seconds.get(0) + line.first();
    double interval = isExact ? (seconds.get(n - 1) - seconds.get(0)) / (n - 1) : line.interval();
    return timeBase.axis(start, interval, n, printPpm);
  }

  /**
   * Holds an interval that the user gives against the times: they show where samples are missing,
   * and whether it is another one.
   *
   * @param isInSeconds whether the unit of the times is known; else they only have to be even
   */
  void require(Path file, double intervalSeconds, boolean isInSeconds) {
    requireForward(file);
    if (!isInSeconds) {
      requireEven(file, fitted());
      return;
    }
    double print = 2 * rounding(intervalSeconds);
    for (int i = 1; i < seconds.size(); i++) {
      double step = seconds.get(i) - seconds.get(i - 1);
      double since = seconds.get(i) - seconds.get(0);
      double drift = Math.abs(since - i * intervalSeconds);
      double allowed = intervalSeconds / 2 + print;
      boolean isStep = Math.abs(step - intervalSeconds) <= allowed;
      if (!isStep || drift > allowed + OWN_CLOCK_PPM * 1e-6 * i * intervalSeconds) {
        throw CaptureLines.wrong(
            file,
            (int) lines.get(i),
            String.format(
                Locale.ROOT,
                "is %.6g s after the line before it and %.6g s after the first sample, where the"
                    + " given interval of %.6g s leads to %.6g s: %s",
                step,
                since,
                intervalSeconds,
                i * intervalSeconds,
                isStep ? "leave out --interval" : "export every sample, or leave out --interval"));
      }
    }
  }

  /**
   * A straight line through the times.
   *
   * @param first its time of the first sample, counted from that sample's own
   */
  private record Line(double first, double interval) {}

  private Line fitted() {
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
    return new Line(mean - middle * interval, interval);
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

  /** How far the worst time lies off the axis, in seconds. */
  private double requireEven(Path file, Line line) {
    double interval = line.interval();
    int worst = 0;
    double worstOff = 0;
    for (int i = 0; i < seconds.size(); i++) {
      double off = Math.abs(seconds.get(i) - seconds.get(0) - (line.first() + i * interval));
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
                  + " %.6g s; export every sample",
              seconds.get(worst) - seconds.get(0),
              interval,
              line.first() + worst * interval));
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
