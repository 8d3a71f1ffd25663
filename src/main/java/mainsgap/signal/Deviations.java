package mainsgap.signal;

/**
 * How samples deviate from a model.
 *
 * @param standardDeviationVolts their root mean square
 * @param neighbourCorrelation the correlation of neighbouring samples' deviations, -1 to 1
 */
public record Deviations(double standardDeviationVolts, double neighbourCorrelation) {
  private static final int AT_ONCE = 512;

  /**
   * Deviations of every {@code stride}-th sample from {@code from} (inclusive) to {@code to}
   * (exclusive), each with its direct neighbour.
   */
  public static Deviations of(
      double[] volts, TimeAxis time, int from, int to, int stride, PeriodicModel model) {
    return within(Double.POSITIVE_INFINITY, volts, time, from, to, stride, model);
  }

  /**
   * The same of those alone that are no farther from the model than a limit, and whose neighbours
   * are.
   */
  static Deviations within(
      double limitVolts,
      double[] volts,
      TimeAxis time,
      int from,
      int to,
      int stride,
      PeriodicModel model) {
    int count = Math.max(0, (to - from + stride - 2) / stride);
    PeriodicModel.Row row = model.every(stride * time.intervalSeconds());
    double[] here = new double[Math.min(count, AT_ONCE)];
    double[] next = new double[here.length];
    double squares = 0;
    double products = 0;
    int counted = 0;
    for (int done = 0; done < count; done += AT_ONCE) {
      int first = from + done * stride;
      int some = Math.min(count - done, AT_ONCE);
      row.fill(here, some, time.secondsAt(first));
      row.fill(next, some, time.secondsAt(first + 1));
      for (int k = 0; k < some; k++) {
        double deviation = volts[first + k * stride] - here[k];
        double neighbour = volts[first + k * stride + 1] - next[k];
        if (Math.abs(deviation) <= limitVolts && Math.abs(neighbour) <= limitVolts) {
          squares += (deviation * deviation + neighbour * neighbour) / 2;
          products += deviation * neighbour;
          counted++;
        }
      }
    }
    if (counted == 0 || squares == 0) {
      return new Deviations(0, 0);
    }
    return new Deviations(Math.sqrt(squares / counted), products / squares);
  }
}
