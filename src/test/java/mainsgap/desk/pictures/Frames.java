package mainsgap.desk.pictures;

import java.util.Arrays;
import java.util.Locale;

/** The times of many frames, in nanoseconds. For the UI thread. */
final class Frames {
  private final String name;
  private final long[] own;
  private final long[] layout;
  private final long[] processor;
  private final long[] intervals;
  private int count;

  Frames(String name, int most) {
    this.name = name;
    own = new long[most];
    layout = new long[most];
    processor = new long[most];
    intervals = new long[most];
  }

  boolean isFull() {
    return count == own.length;
  }

  void add(long ownNanos, long layoutNanos, long processorNanos, long intervalNanos) {
    if (!isFull()) {
      own[count] = ownNanos;
      layout[count] = layoutNanos;
      processor[count] = processorNanos;
      intervals[count] = intervalNanos;
      count++;
    }
  }

  double ownMillis(double share) {
    return millis(own, share);
  }

  static String heading() {
    return String.format(
            Locale.ROOT,
            "%-16s %26s %26s %26s %26s%n",
            "ms",
            "own work of a frame",
            "layout with painting",
            "processor time",
            "from frame to frame")
        + String.format(Locale.ROOT, "%-16s", "traces, view")
        + String.format(Locale.ROOT, " %8s %8s %8s", "median", "95 %", "most").repeat(4)
        + System.lineSeparator();
  }

  String row() {
    return String.format(Locale.ROOT, "%-16s", name)
        + figures(own)
        + figures(layout)
        + figures(processor)
        + figures(intervals)
        + System.lineSeparator();
  }

  private static String figures(long[] nanos) {
    return String.format(
        Locale.ROOT,
        " %8.2f %8.2f %8.2f",
        millis(nanos, 0.5),
        millis(nanos, 0.95),
        millis(nanos, 1));
  }

  private static double millis(long[] nanos, double share) {
    long[] sorted = nanos.clone();
    Arrays.sort(sorted);
    return sorted[(int) Math.ceil(share * sorted.length) - 1] * 1e-6;
  }
}
