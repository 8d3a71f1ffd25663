package mainsgap.report;

import java.awt.geom.Path2D;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.Waveform;

/**
 * One trace on the axis that it shares with others.
 *
 * @param trace whose voltage it is
 * @param zeroSeconds what stands at 0, on the capture's own axis
 */
record TraceLine(AlignedTrace trace, double zeroSeconds) {

  static TraceLine of(AlignedTrace trace, OverlaidTraces.Alignment alignment) {
    return new TraceLine(trace, alignment.zeroSeconds(trace));
  }

  /** The time of the loss on the shared axis. */
  double lossMillis() {
    return 1e3 * (trace.lossSeconds() - zeroSeconds);
  }

  private TimeAxis time() {
    return trace.capture().time();
  }

  private Waveform output() {
    return trace.capture().output();
  }

  /** The voltage of the nearest sample. */
  double voltsAt(double millis) {
    long nearest = Math.round(time().indexAt(zeroSeconds + millis / 1e3));
    return output().voltsAt((int) Math.max(0, Math.min(time().length() - 1, nearest)));
  }

  /** The largest magnitude between two times; 0 where nothing was recorded there. */
  double mostVolts(double fromMillis, double toMillis) {
    double most = 0;
    int to = sampleAt(toMillis);
    for (int i = sampleAt(fromMillis); i < to; i++) {
      most = Math.max(most, Math.abs(output().voltsAt(i)));
    }
    return most;
  }

  /** The least and the most of each column of the drawing, so that nothing is hidden. */
  Path2D path(AxisPlot plot, double fromMillis, double toMillis) {
    Path2D.Double path = new Path2D.Double();
    int columns = (int) Math.ceil(plot.area().getWidth());
    double perColumn = (toMillis - fromMillis) / columns;
    for (int column = 0; column < columns; column++) {
      int from = sampleAt(fromMillis + column * perColumn);
      int to = sampleAt(fromMillis + (column + 1) * perColumn);
      if (from < to) {
        addColumn(path, plot, from, to);
      }
    }
    return path;
  }

  private void addColumn(Path2D path, AxisPlot plot, int from, int to) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int i = from; i < to; i++) {
      double volts = output().voltsAt(i);
      low = Math.min(low, volts);
      high = Math.max(high, volts);
    }
    double x = plot.x(1e3 * (time().secondsAt((from + to - 1) / 2.0) - zeroSeconds));
    if (path.getCurrentPoint() == null) {
      path.moveTo(x, plot.y(high));
    } else {
      path.lineTo(x, plot.y(high));
    }
    if (low < high) {
      path.lineTo(x, plot.y(low));
    }
  }

  /** The first sample at or after a time, within the record. */
  private int sampleAt(double millis) {
    double at = Math.ceil(time().indexAt(zeroSeconds + millis / 1e3));
    return (int) Math.max(0, Math.min(time().length(), at));
  }
}
